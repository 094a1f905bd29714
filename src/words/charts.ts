import { unreachable } from '#base/unreachable.ts';
import type {
  AttributeGuess,
  ChartRefusal,
  ChartRemark,
  ChartRepeat,
  LeftOutReason,
  LineBecame,
} from '#engine/draft/chart-reading.ts';
import { counted } from './screens.ts';

/** Why a line of a pasted chart is in no row. */
export const LEFT_OUT_WORDS: Readonly<Record<LeftOutReason, string>> = {
  page: 'Left out: a page’s header, footer or number.',
  decoration: 'Left out: only lines and dots.',
  elsewhere: 'Left out: it points to another chart. Copy its slots from there.',
  'too-many-slots': 'Left out: more slots than one channel has. Write its channels one by one.',
  'too-many-values': 'Left out: a channel has 256 values, and this one has as many lines already.',
  'chart-full': 'Left out: the charts have more slots than one reading takes. Paste them one after the other.',
  'past-512': 'Left out: a universe ends at slot 512.',
  'too-long': 'Left out: too long for a line of a chart.',
  'no-row': 'Left out: values with no slot above them.',
  'in-no-mode': 'Left out: no mode has it.',
  text: 'Left out: neither a slot nor values stand in it.',
};

/** How sure an attribute is. */
export const GUESS_WORDS: Readonly<Record<AttributeGuess, string>> = {
  stated: 'the chart says so',
  sure: 'its name says so',
  likely: 'likely: check it with the manual',
  unknown: 'not known: choose an attribute',
};

/** What became of a line. Rows count from 1; the mode is named where there are several. */
export function sayBecame(became: LineBecame, modes: readonly { readonly name: string }[]): string {
  switch (became.kind) {
    case 'blank':
      return 'Blank';
    case 'heading':
      return 'Heading';
    case 'left-out':
      return LEFT_OUT_WORDS[became.reason];
    case 'row':
      return `Row ${places(became.of, modes)}`;
    case 'range':
      return `Values of row ${places(became.of, modes)}`;
    case 'continuation':
      return `Goes on with row ${places(became.of, modes)}`;
    default:
      return unreachable(became);
  }
}

function places(
  of: readonly { readonly mode: number; readonly row: number }[],
  modes: readonly { readonly name: string }[],
): string {
  const parts = [...new Set(of.map(({ mode }) => mode))].map((mode) => {
    const rows = of.filter((ref) => ref.mode === mode).map(({ row }) => row + 1);
    const [first = 0] = rows;
    const last = rows.at(-1) ?? first;
    const numbers = first === last ? String(first) : `${first} to ${last}`;
    return modes.length < 2 ? numbers : `${numbers} (${modes[mode]?.name || `chart ${mode + 1}`})`;
  });
  return parts.join(', ');
}

/** What to check in what was read. */
export function sayChartRemark({ code, text }: ChartRemark): string {
  switch (code) {
    case 'footprint-differs': {
      const [said = '', read = ''] = text.split(', ');
      return `The heading says ${said} slots; the rows reach slot ${read}. Check which lines are missing or too many.`;
    }
    case 'counted-from-0':
      return 'The chart counts its slots from 0. They were counted up by 1, so that the first is slot 1.';
    case 'slot-twice':
      return `Slot ${text} stands in another row as well. Check both with the manual.`;
    case 'slots-not-named':
      return `No row has slot ${text}. Check whether lines are missing.`;
    case 'from-percent':
      return `Values in percent (${text}) were made into steps of 0 to 255. Check where one ends and the next begins.`;
    case 'from-16-bit':
      return 'Values up to 65535 were made into steps of 0 to 255.';
    case 'value-unread':
      return `“${text}” could not be read as values. Write them in by hand.`;
    case 'default-unread':
      return `“${text}” could not be read as a value of this channel. Write it in by hand.`;
    case 'note-not-taken':
      return `“${text}” has no place beside the values and was not taken in.`;
    case 'fine-values':
      return `The fine byte’s row said “${text}”, which was not taken in.`;
    case 'fine-alone':
      return `“${text}” looks like a fine byte, and no row has its coarse one. Check it with the manual.`;
    case 'many-bytes':
      return `One channel of ${text} slots. Check that they are not several channels.`;
    case 'taken-apart':
      return `“${text}” stood for several slots and became a row for each. Check their order with the manual.`;
    default:
      return unreachable(code);
  }
}

/** Offers to make cells of rows that come again. */
export const sayRepeat = ({ firstRow, rows, count, step }: ChartRepeat): string =>
  `${counted(rows, 'row')} from row ${firstRow + 1} on come ${count} times, each time ${counted(step, 'slot')} further.`;

/** Why a text could not be read as a chart at all. */
export function sayChartRefusal(refusal: ChartRefusal): { readonly what: string; readonly next: string } {
  switch (refusal.code) {
    case 'no-text':
      return { what: 'There is no text in it.', next: 'Copy the chart in the manual and paste it here.' };
    case 'too-large':
      return {
        what: `The text has ${refusal.characters.toLocaleString('en-GB')} characters; a chart may have ${refusal.limit.toLocaleString('en-GB')}.`,
        next: 'Copy only the pages with the chart.',
      };
    case 'too-many-lines':
      return {
        what: `The text has more than ${refusal.limit.toLocaleString('en-GB')} lines.`,
        next: 'Copy only the pages with the chart.',
      };
    default:
      return unreachable(refusal);
  }
}
