import type { XmlElement } from './read-xml.ts';

export const childrenOf = (element: XmlElement | undefined, name: string): readonly XmlElement[] =>
  element?.children.filter((child) => child.name === name) ?? [];

/** The first element along a path of names. */
export function elementAt(element: XmlElement, ...path: readonly string[]): XmlElement | undefined {
  let at: XmlElement | undefined = element;
  for (const name of path) at = at?.children.find((child) => child.name === name);
  return at;
}

/** Every element below one, in the order of the document. */
export function* below(element: XmlElement): Generator<XmlElement> {
  for (const child of element.children) {
    yield child;
    yield* below(child);
  }
}

export const textOf = (element: XmlElement, name: string): string => element.attributes[name] ?? '';
