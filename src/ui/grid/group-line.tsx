import { unreachable } from '#base/unreachable.ts';
import { SHEET_WORDS } from '#words/sheet.ts';
import type { Heading, RowGroup } from '../live/rows/row-group.ts';

export interface GroupLineProps {
  readonly group: RowGroup;
  /** Line from 0. */
  readonly line: number;
  readonly top: number;
  readonly height: number;
  /** How many columns it reaches over. */
  readonly columns: number;
}

/** The heading of a group: its name, and what a crew asks of it. */
export function GroupLine({ group, line, top, height, columns }: GroupLineProps) {
  return (
    <div
      role="row"
      aria-rowindex={line + 2}
      className="absolute left-0 flex min-w-full items-end border-b border-ink bg-sheet"
      style={{ top, height }}
    >
      <div role="gridcell" aria-colindex={1} aria-colspan={columns} className="sticky left-0 truncate px-2 pb-1">
        <GroupName group={group} />
      </div>
    </div>
  );
}

/** What a group is called, with its units and slots. */
export function GroupName({ group }: { readonly group: RowGroup }) {
  return (
    <>
      <span className="mr-3 font-serif text-name font-semibold">{headingWords(group.heading)}</span>
      <span className="text-soft">{SHEET_WORDS.groupSum(group.ids.length, group.slots)}</span>
    </>
  );
}

function headingWords(heading: Heading): string {
  switch (heading.kind) {
    case 'none':
      return '';
    case 'position':
      return heading.name.trim() === '' ? SHEET_WORDS.noPosition : heading.name;
    case 'universe': {
      if (heading.universe === null) return SHEET_WORDS.notPatched;
      const name = SHEET_WORDS.universe(heading.universe);
      return heading.label === '' ? name : `${name} · ${heading.label}`;
    }
    default:
      return unreachable(heading);
  }
}
