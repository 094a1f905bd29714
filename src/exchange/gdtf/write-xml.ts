/** An element to write; attributes that are undefined are left out. */
export interface Tag {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | number | undefined>>;
  readonly children: readonly Tag[];
}

export const tag = (name: string, attributes: Tag['attributes'], children: readonly Tag[] = []): Tag => ({
  name,
  attributes,
  children,
});

/** A document of one element, one tag to a line. */
export function writeXml(root: Tag): string {
  const lines = ['<?xml version="1.0" encoding="UTF-8" standalone="no"?>'];
  write(root, '', lines);
  return `${lines.join('\n')}\n`;
}

function write({ name, attributes, children }: Tag, indent: string, lines: string[]): void {
  const spelled = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${escapeText(String(value))}"`)
    .join('');
  if (children.length === 0) {
    lines.push(`${indent}<${name}${spelled}/>`);
    return;
  }
  lines.push(`${indent}<${name}${spelled}>`);
  for (const child of children) write(child, `${indent} `, lines);
  lines.push(`${indent}</${name}>`);
}

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Line ends and tabs are escaped, or a reader would take them for blanks; what XML cannot hold at all becomes U+FFFD. */
function escapeText(text: string): string {
  return text
    .replace(/[&<>"]/g, (sign) => ESCAPES[sign] ?? sign)
    .replace(/[\t\n\r]/g, (sign) => `&#${sign.charCodeAt(0)};`)
    .replace(/[\p{Cc}\p{Cs}\ufffe\uffff]/gu, (sign) => (sign >= '\u007f' && sign <= '\u009f' ? sign : '\ufffd'));
}
