/**
 * A fixture type while it is being written, with the manual on the knee: the text of its cells as people type them, be it
 * right or wrong. `typeOfDraft` says what it amounts to. Every cell merges by itself, so two people may write at once.
 */
export interface Draft {
  readonly facts: Readonly<Record<FactField, string>>;
  /** In the order in which they are shown. */
  readonly modes: readonly DraftMode[];
}

/** What the manual says of the whole unit. Hazards hold `yes` or nothing, `laser` a class, `switches` `A` or `B`. */
export const FACT_FIELDS = [
  'maker',
  'model',
  'shortName',
  'description',
  'weight',
  'power',
  'powerFactor',
  'voltage',
  'connector',
  'perBreaker',
  'switches',
  'onLoss',
  'laser',
  'strobe',
  'ultraviolet',
  'movingParts',
  'fog',
  'heat',
] as const;

export type FactField = (typeof FACT_FIELDS)[number];

export interface DraftMode {
  readonly id: string;
  /** Where it stands among the modes: ascending, ties by id. */
  readonly order: number;
  readonly name: string;
  readonly description: string;
  /** Firmware versions it is in, separated by commas; empty: all. */
  readonly firmware: string;
  /** The mode of the base revision that it is, slot by slot, until its chart is opened; empty when it has a chart of its own. */
  readonly kept: string;
  /** In order. */
  readonly rows: readonly DraftRow[];
  readonly repeats: readonly DraftRepeat[];
}

/** One line of a slot chart: a channel. */
export interface DraftRow {
  readonly id: string;
  readonly order: number;
  /** Slots as the manual numbers them, coarse first: `5`, `5-6`, `5, 9`; empty: virtual. Of a repeated row: those of its first cell. */
  readonly slots: string;
  /** `1` to `4`; empty: 1. */
  readonly break: string;
  /** What the manual calls it. */
  readonly name: string;
  /** A GDTF attribute, or any text; `Pan ?` is a guess that nobody has confirmed yet. */
  readonly attribute: string;
  /** Of which part it is; empty: of the body. Parts tell apart channels that do the same. */
  readonly part: string;
  /** Values of the whole channel, from 0; `n/1` counts in 8 bit steps. */
  readonly default: string;
  readonly highlight: string;
  /** One a line: `0-10 Closed`, or `11-127 Strobe, slow to fast [Shutter1Strobe]` where what it does changes. In 8 bit steps. */
  readonly ranges: string;
  /** The repeat it belongs to; empty: none. */
  readonly repeat: string;
}

/** Rows that come `count` times, each cell `step` slots after the one before. */
export interface DraftRepeat {
  readonly id: string;
  readonly name: string;
  readonly count: string;
  /** Empty: as many slots as its rows span. */
  readonly step: string;
}

export const MODE_FIELDS = ['order', 'name', 'description', 'firmware', 'kept'] as const;
export const ROW_FIELDS = [
  'order',
  'slots',
  'break',
  'name',
  'attribute',
  'part',
  'default',
  'highlight',
  'ranges',
  'repeat',
] as const;
export const REPEAT_FIELDS = ['name', 'count', 'step'] as const;

export type ModeField = (typeof MODE_FIELDS)[number];
export type RowField = (typeof ROW_FIELDS)[number];
export type RepeatField = (typeof REPEAT_FIELDS)[number];

/**
 * One change of a draft: a cell gets a value; an empty text or null empties it. A mode or row is there while its `order`
 * is a number, a repeat while its `count` is not empty.
 */
export type DraftEdit =
  | { readonly of: 'facts'; readonly field: FactField; readonly value: string | null }
  | { readonly of: 'mode'; readonly mode: string; readonly field: ModeField; readonly value: string | number | null }
  | {
      readonly of: 'row';
      readonly mode: string;
      readonly row: string;
      readonly field: RowField;
      readonly value: string | number | null;
    }
  | {
      readonly of: 'repeat';
      readonly mode: string;
      readonly repeat: string;
      readonly field: RepeatField;
      readonly value: string | null;
    };
