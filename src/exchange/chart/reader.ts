import type { Block, Fate, RawRow } from './blocks.ts';
import type { Frame } from './column-heading.ts';
import type { ModeHeading } from './mode-heading.ts';
import { type PageLines, pageLines } from './page-lines.ts';
import type { SplitLine } from './split-lines.ts';

/** A reader before its first line. */
export function newReader(lines: readonly SplitLine[]): Reader {
  return {
    lines,
    pages: pageLines(lines),
    blocks: [],
    fates: [],
    frame: null,
    headedAt: -1,
    headAt: -1,
    pending: null,
    title: null,
    firstTitle: null,
    row: null,
    indent: 0,
    worded: false,
    slots: 0,
    wrapped: 0,
  };
}

interface Title {
  readonly at: number;
  readonly text: string;
}

/** Where reading a chart stands: the one value that changes as lines are read. */
export interface Reader {
  readonly lines: readonly SplitLine[];
  readonly pages: PageLines;
  readonly blocks: Block[];
  readonly fates: Fate[];
  frame: Frame | null;
  /** The line of the last heading of columns. */
  headedAt: number;
  /** The line where the frame comes from: the same words again head the same columns. */
  headAt: number;
  /** A mode's heading, until a row follows. */
  pending: ModeHeading | null;
  /** A line of words that may turn out to be the name of the next chart. */
  title: Title | null;
  /** The one that stood over the first chart. */
  firstTitle: Title | null;
  row: RawRow | null;
  /** Spaces before the last row's slots. */
  indent: number;
  /** All rows of the block have a word before their slots. */
  worded: boolean;
  /** Slots of all rows so far. */
  slots: number;
  /** Lines that went on with the one above. */
  wrapped: number;
}
