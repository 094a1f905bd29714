import { type CSSProperties, type ReactNode, useState } from 'react';
import type { CardField, CardKind } from '#engine/model/card.ts';
import type { PlanName } from '#engine/model/edit.ts';
import type { CellValue } from '#engine/model/field.ts';
import type { Rig } from '#engine/model/rig.ts';
import { HOUSE_WORDS as words } from '#words/house.ts';
import { LinkButton } from '../kit/link-button.tsx';
import type { RigStore } from '../live/rig-store.ts';
import { CardCell } from './card-cell.tsx';
import { Labelled } from './labelled.tsx';

/** What cards are drawn from and written to. */
export interface CardScene {
  readonly store: RigStore;
  readonly rig: Rig;
  readonly writable: 'yes' | 'no';
}

export interface CardColumn {
  readonly card: CardKind;
  readonly plan: PlanName;
  readonly field: CardField;
  readonly label: string;
  /** Its part of the width, of all the columns'. */
  readonly share: number;
  /** What stands in an empty cell. */
  readonly placeholder?: string;
}

interface CardLine {
  /** The key of its cards. */
  readonly of: string;
  readonly name: string;
  /** What stands before its cells: its name, as text or to be written. */
  readonly lead: ReactNode;
  /** What else can be done with it, behind its cells. */
  readonly acts?: ReactNode;
  /** Cells that a card of it gets with its first. */
  readonly begins?: Readonly<Record<string, CellValue>>;
}

export interface CardListProps {
  readonly scene: CardScene;
  /** What it lists, for a screen reader. */
  readonly name: string;
  /** What heads the names. */
  readonly head: string;
  readonly columns: readonly CardColumn[];
  readonly lines: readonly CardLine[];
  /** Lines that are drawn before one asks for all. */
  readonly first?: number;
}

const GRID = 'grid grid-cols-2 gap-x-2 gap-y-1 sm:grid-cols-4 lg:grid-cols-(--columns) lg:items-center';

/** Where there is room a line reads like a line of a sheet: its cells show that they are fields when one comes near. */
const QUIET =
  'lg:[&_:is(input,select)]:border-transparent lg:[&_:is(input,select)]:bg-transparent lg:hover:[&_:is(input,select)]:border-edge lg:focus-within:[&_:is(input,select)]:border-edge';

/** Cards one below the other, their cells written in place: a ruled table where there is room, else a block for each. */
export function CardList({ scene, name, head, columns, lines, first = 100 }: CardListProps) {
  const [all, setAll] = useState(false);
  if (lines.length === 0) return null;
  const shares = columns.map(({ share }) => `minmax(0,${share}fr)`).join(' ');
  return (
    <div style={{ '--columns': `minmax(0,3fr) ${shares} minmax(5rem,auto)` } as CSSProperties}>
      <div aria-hidden="true" className={`${GRID} pt-2 text-small text-soft max-lg:hidden`}>
        <span>{head}</span>
        {columns.map(({ card, field, label }) => (
          <span key={`${card} ${field}`} className="px-2">
            {label}
          </span>
        ))}
      </div>
      <ul aria-label={name}>
        {(all ? lines : lines.slice(0, first)).map((line) => (
          <li key={line.of} aria-label={line.name} className={`${GRID} ${QUIET} border-b border-rule py-1 max-lg:py-3`}>
            <div className="col-span-full min-w-0 [overflow-wrap:anywhere] lg:col-span-1">{line.lead}</div>
            {columns.map((column) => (
              <Cell key={`${column.card} ${column.field}`} scene={scene} column={column} line={line} />
            ))}
            <div className="col-span-full flex flex-wrap gap-x-3 lg:col-span-1 lg:justify-end">{line.acts}</div>
          </li>
        ))}
      </ul>
      {lines.length > first && !all ? (
        <LinkButton onClick={() => setAll(true)}>{words.more(lines.length)}</LinkButton>
      ) : null}
    </div>
  );
}

interface CellProps {
  readonly scene: CardScene;
  readonly column: CardColumn;
  readonly line: CardLine;
}

function Cell({ scene: { store, rig, writable }, column, line }: CellProps) {
  const { card, plan, field, label, placeholder } = column;
  return (
    <Labelled label={label} looks="lg:hidden">
      <CardCell
        store={store}
        rig={rig}
        plan={plan}
        card={card}
        of={line.of}
        field={field}
        name={words.cellOf(label, line.name)}
        disabled={writable === 'no'}
        {...(placeholder === undefined ? {} : { placeholder })}
        begins={line.begins}
      />
    </Labelled>
  );
}
