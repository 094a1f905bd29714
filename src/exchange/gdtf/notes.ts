import type { Defect, Guess } from '#engine/type/gdtf-report.ts';
import type { XmlElement } from './read-xml.ts';

/** The most defects a report lists; the rest are counted. */
const LISTED = 200;

/** Collects what reading a description comes across. */
export class Notes {
  readonly defects: Defect[] = [];
  readonly guesses: Guess[] = [];
  moreDefects = 0;
  oldOffsets = 0;
  oldDefaults = 0;

  defect(code: Defect['code'], at: { readonly line: number }, what: string): void {
    if (this.defects.length >= LISTED) this.moreDefects += 1;
    else this.defects.push({ code, line: at.line, what: what.slice(0, 200) });
  }

  /** A finite number of an attribute, null when it is missing; one that is none is a defect and reads as missing. */
  number(element: XmlElement, name: string): number | null {
    const text = element.attributes[name]?.trim() ?? '';
    if (text === '') return null;
    const value = Number(text.replace(',', '.'));
    if (Number.isFinite(value)) return value;
    this.defect('number', element, `${name}="${text}"`);
    return null;
  }
}
