import { memo } from 'react';
import type { ListLine, ListRemark } from '#engine/list/read-list.ts';
import type { Cells } from '#engine/model/fixture.ts';
import { LINE_WORDS, LISTS_IN_WORDS, REMARK_WORDS, UNREAD_WORDS } from '#words/lists-in.ts';
import { Mark } from '../../kit/mark.tsx';
import { columnName } from './column-name.ts';
import { fixtureWords } from './fixture-words.ts';
import { REMARK_SEVERITY } from './remark-severity.ts';

export interface LineCellsProps {
  readonly line: ListLine;
  readonly leftOut: boolean;
  readonly onLeaveOut: (line: number) => void;
  readonly onTake: (line: number) => void;
}

/** The cells of a fixture: a line of a sheet where there is room, words one after the other where there is not. */
export const FIXTURE_COLUMNS =
  'flex flex-wrap gap-x-3 md:grid md:grid-cols-[4rem_minmax(6rem,1fr)_3.5rem_minmax(8rem,2fr)_minmax(6rem,1fr)_6rem_minmax(8rem,2fr)]';

/** The cells of one line, within its row: whether to bring it in, its number, and what it becomes. */
export const LineCells = memo(function LineCells({ line, leftOut, onLeaveOut, onTake }: LineCellsProps) {
  return (
    <>
      <td className="h-row text-center align-top">
        {line.kind === 'fixtures' ? (
          <input
            type="checkbox"
            className="mt-1 size-4 accent-ink touch:size-6"
            aria-label={LISTS_IN_WORDS.takeLine(line.line)}
            checked={!leftOut}
            onChange={() => (leftOut ? onTake(line.line) : onLeaveOut(line.line))}
          />
        ) : null}
      </td>
      <td className="py-0.5 pr-2 text-right align-top font-mono text-small text-soft leading-5 tabular-nums">
        {line.line}
      </td>
      <td className="py-0.5 align-top [overflow-wrap:anywhere]">
        {leftOut ? <p className="text-soft">{LISTS_IN_WORDS.leftOut}</p> : null}
        <div className={leftOut ? 'text-soft line-through' : undefined}>
          <Becomes line={line} />
        </div>
        {leftOut ? null : numbered(line.remarks).map(({ number, item }) => <Remark key={number} remark={item} />)}
      </td>
    </>
  );
});

function Becomes({ line }: { readonly line: ListLine }) {
  switch (line.kind) {
    case 'fixtures':
      return numbered(line.fixtures).map(({ number, item }) => <FixtureLine key={number} cells={item} />);
    case 'unread':
      return (
        <p>
          <Mark severity="caution" /> {UNREAD_WORDS[line.reason]} <Text text={line.text} />
        </p>
      );
    case 'position':
      return (
        <p>
          <span className="text-soft">{LINE_WORDS.position}:</span>{' '}
          <span className="font-serif text-large">{line.position}</span>
        </p>
      );
    case 'universe':
      return (
        <p>
          <span className="text-soft">{LINE_WORDS.universe}:</span> <span className="font-mono">{line.universe}</span>
        </p>
      );
    default:
      return (
        <p>
          <span className="text-soft">{LINE_WORDS[line.kind]}</span> <Text text={line.text} />
        </p>
      );
  }
}

const Text = ({ text }: { readonly text: string }) =>
  text === '' ? null : <span className="text-soft">“{text}”</span>;

function FixtureLine({ cells }: { readonly cells: Cells }) {
  const words = fixtureWords(cells);
  return (
    <div className={FIXTURE_COLUMNS}>
      <span className="text-right tabular-nums">{words.channel}</span>
      <span>{words.position}</span>
      <span className="text-right">{words.unit}</span>
      <span>{words.type}</span>
      <span>{words.mode}</span>
      <span className="font-mono font-semibold tabular-nums">{words.address}</span>
      <span className="text-soft">{words.rest}</span>
    </div>
  );
}

function Remark({ remark }: { readonly remark: ListRemark }) {
  return (
    <p className="flex gap-1">
      <Mark severity={REMARK_SEVERITY[remark.code]} />
      <span>
        {remark.column === null ? null : <span className="text-soft">{columnName(remark.column)}: </span>}
        {REMARK_WORDS[remark.code](remark.text)}
      </span>
    </p>
  );
}

/** What one line makes and says is known by its place within the line: read anew, it is another list. */
const numbered = <Item,>(items: readonly Item[]) => items.map((item, index) => ({ number: index + 1, item }));
