import { useState } from 'react';
import type { DraftMode, DraftRow } from '#engine/draft/draft.ts';
import { type DraftTrouble, stopsPublishing } from '#engine/draft/draft-trouble.ts';
import { isGuess, withoutGuess } from '#engine/draft/guess.ts';
import { DRAFT_SCREEN_WORDS } from '#words/draft-screen.ts';
import { draftTroubleSentence, ROW_NAMES } from '#words/drafts.ts';
import { Button } from '../../kit/button.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import { Mark } from '../../kit/mark.tsx';
import { carryOut, confirmGuesses } from '../chart/chart-actions.ts';
import { CHART_COLUMNS, chartCellText, isTyped, repeatOf } from '../chart/chart-columns.ts';
import { selectCell } from '../chart/chart-selection.ts';
import type { Desk } from '../desk.ts';
import { DraftField } from '../draft-field.tsx';
import { useDesk, useReading, useWritable } from '../use-desk.ts';

export interface PhoneRowsProps {
  readonly desk: Desk;
  readonly mode: DraftMode;
  readonly troubles: readonly DraftTrouble[];
}

/** A chart on a phone: a list of rows, or one row with its cells below each other. */
export function PhoneRows({ desk, mode, troubles }: PhoneRowsProps) {
  const [shown, setShown] = useState(false);
  const at = useDesk(desk, (state) => mode.rows.findIndex((row) => row.id === state.selection?.cursor.row));
  const row = mode.rows[at];
  const show = (id: string | undefined) => {
    if (id === undefined) return;
    desk.select(selectCell({ row: id, column: 'attribute' }));
    setShown(true);
  };
  if (shown && row !== undefined) {
    return (
      <section className="flex flex-col gap-3">
        <div className="flex flex-wrap items-center gap-2">
          <h3 className="mr-auto text-large">{DRAFT_SCREEN_WORDS.rowOf(at + 1, mode.rows.length)}</h3>
          <Button disabled={at === 0} onClick={() => show(mode.rows[at - 1]?.id)}>
            {DRAFT_SCREEN_WORDS.previous}
          </Button>
          <Button disabled={at === mode.rows.length - 1} onClick={() => show(mode.rows[at + 1]?.id)}>
            {DRAFT_SCREEN_WORDS.next}
          </Button>
        </div>
        <PhoneRow key={row.id} desk={desk} mode={mode} row={row} troubles={ofRow(troubles, row)} />
        <LinkButton onClick={() => setShown(false)}>{DRAFT_SCREEN_WORDS.list}</LinkButton>
      </section>
    );
  }
  return (
    <ol aria-label={DRAFT_SCREEN_WORDS.rows}>
      {mode.rows.map((each) => (
        <li key={each.id} className="border-b border-rule">
          <Card
            row={each}
            troubles={ofRow(troubles, each)}
            repeat={chartCellText(each, 'repeat', repeatOf(mode, each))}
            onShow={() => show(each.id)}
          />
        </li>
      ))}
    </ol>
  );
}

const ofRow = (troubles: readonly DraftTrouble[], row: DraftRow) =>
  troubles.filter(({ where }) => where.of === 'row' && where.row === row.id);

interface CardProps {
  readonly row: DraftRow;
  readonly troubles: readonly DraftTrouble[];
  /** How often it comes; empty: once. */
  readonly repeat: string;
  readonly onShow: () => void;
}

function Card({ row, troubles, repeat, onShow }: CardProps) {
  const guess = isGuess(row.attribute);
  return (
    <button
      type="button"
      className="flex min-h-control w-full flex-wrap items-center gap-x-3 py-2 text-left"
      onClick={onShow}
    >
      <span className="min-w-[3.5rem] font-mono text-large font-semibold tabular-nums">{row.slots}</span>
      <span className="min-w-0 flex-1 [overflow-wrap:anywhere]">
        {row.name} {repeat === '' ? null : <span className="text-soft">{repeat}</span>}
      </span>
      <span>
        {troubles.length === 0 ? null : <Mark severity={troubles.some(stopsPublishing) ? 'blocker' : 'caution'} />}
        {guess ? <Mark severity="note" className="mr-1" /> : null}
        {withoutGuess(row.attribute)}
        {guess ? <span className="text-soft"> {DRAFT_SCREEN_WORDS.guessedShort}</span> : null}
      </span>
    </button>
  );
}

interface PhoneRowProps extends PhoneRowsProps {
  readonly row: DraftRow;
}

function PhoneRow({ desk, mode, row, troubles }: PhoneRowProps) {
  const { draft } = useReading(desk.store);
  const writable = useWritable(desk.store);
  const repeat = chartCellText(row, 'repeat', repeatOf(mode, row));
  return (
    <div className="flex flex-col gap-2">
      {troubles.map((trouble) => (
        <p key={JSON.stringify(trouble)}>
          <Mark severity={stopsPublishing(trouble) ? 'blocker' : 'caution'} /> {draftTroubleSentence(trouble, draft)}
        </p>
      ))}
      {isGuess(row.attribute) && writable ? (
        <p className="flex flex-wrap items-center gap-3">
          <Mark severity="note" /> {withoutGuess(row.attribute)}: {DRAFT_SCREEN_WORDS.guessedShort}
          <Button look="main" onClick={() => confirmGuesses(desk)}>
            {DRAFT_SCREEN_WORDS.confirm}
          </Button>
        </p>
      ) : null}
      {CHART_COLUMNS.filter(isTyped).map((column) => (
        <DraftField
          key={column}
          store={desk.store}
          label={ROW_NAMES[column]}
          value={column === 'attribute' ? withoutGuess(row.attribute) : row[column]}
          lines={column === 'ranges' ? Math.min(8, row.ranges.split('\n').length + 1) : 1}
          where={{ fixture: row.id, field: column }}
          onWrite={(text) =>
            carryOut(desk, [{ of: 'row', mode: mode.id, row: row.id, field: column, value: text.trim() }])
          }
        />
      ))}
      <p>
        <span className="font-medium">{ROW_NAMES.repeat}</span> {repeat}{' '}
        {writable ? (
          <LinkButton onClick={() => desk.set({ window: { kind: 'repeat' } })}>{DRAFT_SCREEN_WORDS.repeat}</LinkButton>
        ) : null}
      </p>
    </div>
  );
}
