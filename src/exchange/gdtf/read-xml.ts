import { SaxesParser } from 'saxes';
import { ok, type Result, refuse } from '#base/result.ts';
import type { XmlRefusal } from '#engine/type/file-refusal.ts';

/** An element of a document; text between elements is left out, since the formats read here keep all in attributes. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly XmlElement[];
  /** Line of its start tag, 1-based. */
  readonly line: number;
}

/**
 * What is told of each element when it ends, with the one it stands in. `done`: what is within it was read, and is not kept,
 * so that a document of a million elements is never in memory as a whole.
 */
export type ElementEnded = (element: XmlElement, within: XmlElement) => 'keep' | 'done';

/**
 * Reads well-formed XML into elements. A document type declaration is refused where it stands, so that no entity is ever
 * declared, let alone expanded; the caps hold while reading.
 */
export function readXml(
  text: string,
  limits: { readonly nodes: number; readonly depth: number },
  ended: ElementEnded = () => 'keep',
): Result<XmlElement, XmlRefusal> {
  const parser = new SaxesParser();
  const root: Open = { name: '', attributes: {}, children: [], line: 1 };
  const open: Open[] = [root];
  let nodes = 0;
  const stop = (refusal: XmlRefusal): never => {
    throw new Stopped(refusal);
  };
  parser.on('error', (error) => stop({ code: 'xml-broken', line: parser.line, what: plainWords(error.message) }));
  parser.on('doctype', () => stop({ code: 'xml-doctype', line: parser.line }));
  // The line is taken where the tag begins: behind its attributes it may be another one.
  let line = 1;
  parser.on('opentagstart', () => {
    line = parser.line;
  });
  parser.on('opentag', (tag) => {
    nodes += 1;
    if (nodes > limits.nodes) stop({ code: 'xml-too-many', line, limit: limits.nodes });
    if (open.length > limits.depth) stop({ code: 'xml-too-deep', line, limit: limits.depth });
    const element: Open = { name: tag.name, attributes: tag.attributes, children: CHILDLESS, line };
    const parent = open[open.length - 1];
    if (parent?.children === CHILDLESS) parent.children = [element];
    else parent?.children.push(element);
    open.push(element);
  });
  parser.on('closetag', () => {
    const element = open.pop();
    const within = open[open.length - 1];
    if (element !== undefined && within !== undefined && ended(element, within) === 'done')
      element.children = CHILDLESS;
  });
  try {
    parser.write(text).close();
  } catch (error) {
    if (error instanceof Stopped) return refuse(error.refusal);
    throw error;
  }
  const [element] = root.children;
  return element === undefined ? refuse({ code: 'xml-broken', line: 1, what: 'no element' }) : ok(element);
}

interface Open extends XmlElement {
  children: XmlElement[];
}

/** Most elements have no children, and need no list of their own. Nothing is ever put into it. */
const CHILDLESS: XmlElement[] = [];

/** Carries a refusal out of the parser's handlers. */
class Stopped extends Error {
  constructor(readonly refusal: XmlRefusal) {
    super(refusal.code);
  }
}

// The parser begins its message with `line:column: `; the line is said beside it.
const plainWords = (message: string) => message.replace(/^\d+:\d+: /, '').replace(/\.$/, '');
