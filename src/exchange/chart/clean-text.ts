/**
 * The text without what cannot be seen: byte order marks, soft hyphens, zero-width characters; every odd space is a plain
 * one. Line ends stay, so that line numbers are those of the source.
 */
export function cleanText(text: string): string {
  return text.replace(/[\u00ad\ufeff\u2060]|\u200b|\u200c|\u200d/g, '').replace(/[^\S\r\n\t]/g, ' ');
}
