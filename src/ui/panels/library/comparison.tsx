import type { FixtureType, TypeMode } from '#engine/model/fixture-type.ts';
import type { ModeChange, SlotChange, TypeComparison } from '#engine/type/compare-types.ts';
import { footprintsOfMode } from '#engine/type/slots-of.ts';
import { footprintWords } from '#words/fixture-types.ts';
import { COMPARE_WORDS, factChangeSentence, textChangeSentence } from '#words/library.ts';
import { type Column, Table } from '../../kit/table.tsx';
import { ROWS_AT_TOP } from './slot-chart.tsx';
import { SlotSide } from './slot-side.tsx';

export interface ComparisonProps {
  readonly before: FixtureType;
  readonly after: FixtureType;
  readonly comparison: TypeComparison;
}

/** What differs between two types: facts, whole modes, and slots side by side. */
export function Comparison({ before, after, comparison }: ComparisonProps) {
  const slots = (type: FixtureType, mode: TypeMode) => footprintWords(footprintsOfMode(type, mode));
  const lines = [
    ...comparison.facts.map(factChangeSentence),
    ...comparison.removed.map((mode) => COMPARE_WORDS.removed(mode.name, slots(before, mode))),
    ...comparison.added.map((mode) => COMPARE_WORDS.added(mode.name, slots(after, mode))),
  ];
  return (
    <div className="flex flex-col gap-4">
      {lines.length === 0 ? null : (
        <ul className="list-disc pl-5 [overflow-wrap:anywhere]">
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      {comparison.changed.map((change) => (
        <ChangedMode key={change.mode} change={change} />
      ))}
    </div>
  );
}

function ChangedMode({ change }: { readonly change: ModeChange }) {
  const { mode, description, firmware, slots } = change;
  const breaks = new Set(slots.map((each) => each.break)).size;
  return (
    <div className={ROWS_AT_TOP}>
      <h3 className="text-large">{COMPARE_WORDS.changed(mode, slots.length)}</h3>
      {firmware === null ? null : <p>{textChangeSentence(COMPARE_WORDS.firmware, firmware)}</p>}
      {description === null ? null : <p>{textChangeSentence(COMPARE_WORDS.description, description)}</p>}
      {slots.length === 0 ? null : (
        <Table
          caption={COMPARE_WORDS.changed(mode, slots.length)}
          columns={columnsOf(breaks > 1 || slots.some((each) => each.break > 1))}
          rows={slots}
          keyOf={(each) => `${each.break}:${each.slot}`}
          rowName="slot"
        />
      )}
    </div>
  );
}

const BREAK: Column<SlotChange> = {
  key: 'break',
  heading: COMPARE_WORDS.break,
  numeric: true,
  cell: (change) => change.break,
};

const COLUMNS: readonly Column<SlotChange>[] = [
  {
    key: 'slot',
    heading: COMPARE_WORDS.slot,
    numeric: true,
    cell: ({ slot }) => <span className="font-mono">{slot}</span>,
  },
  {
    key: 'before',
    heading: COMPARE_WORDS.before,
    cell: ({ before, after }) => <SlotSide uses={before} other={after} />,
  },
  { key: 'after', heading: COMPARE_WORDS.after, cell: ({ before, after }) => <SlotSide uses={after} other={before} /> },
];

const columnsOf = (several: boolean) => (several ? [BREAK, ...COLUMNS] : COLUMNS);
