/**
 * A value of plain data as JSON text the store can hold: signs it cannot (zero, halves of surrogate pairs) become U+FFFD. Files and
 * documents may carry them; nothing that people read does.
 */
export function storableJson(value: object): string {
  const text = JSON.stringify(value);
  // Both are always escaped in JSON; what only looks like such an escape costs a second look and changes nothing.
  if (!/\\u(0000|d[89a-f])/.test(text)) return text;
  return JSON.stringify(value, (_key, each) => (typeof each === 'string' ? storableText(each) : each));
}

export const storableText = (text: string): string => text.replace(/[\0\p{Cs}]/gu, '\ufffd');
