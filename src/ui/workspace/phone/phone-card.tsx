import type { FixtureId } from '#engine/model/ids.ts';
import { isLocked } from '#engine/model/locked.ts';
import { findingSentenceFor, unitName } from '#words/findings.ts';
import { PHONE_WORDS } from '#words/sheet.ts';
import { MARKED } from '../../grid/cell-looks.ts';
import { fieldMarks } from '../../grid/field-marks.ts';
import type { Sheet } from '../../grid/sheet.ts';
import { useRow } from '../../grid/use-sheet.ts';
import { Mark } from '../../kit/mark.tsx';
import { cellText } from '../../live/rows/cell-text.ts';
import { LockMark } from '../../locks/lock-mark.tsx';

export interface PhoneCardProps {
  readonly sheet: Sheet;
  readonly id: FixtureId;
  readonly onShow: (id: FixtureId) => void;
}

/** One unit in the list: where it is, what it is, its address large; a tap opens it. */
export function PhoneCard({ sheet, id, onShow }: PhoneCardProps) {
  const row = useRow(sheet.store, id);
  if (row === undefined) return null;
  const rig = sheet.store.rig();
  const { fixture, findings } = row;
  const address = cellText(rig, fixture, 'address');
  const mark = fieldMarks(row).address;
  const [first] = findings;
  return (
    <button
      type="button"
      className="flex h-[6.25rem] w-full flex-col rounded-control border border-rule-strong bg-sheet px-3 py-1 text-left"
      onClick={() => onShow(id)}
    >
      <span className="flex w-full items-baseline gap-2 text-soft">
        <span className="text-ink">{unitName(fixture)}</span>
        {fixture.channel === null ? null : <span>{`${PHONE_WORDS.channel} ${fixture.channel}`}</span>}
        <span className="ml-auto truncate">{cellText(rig, fixture, 'mode')}</span>
      </span>
      <span className={`font-mono text-[2rem] leading-10 font-semibold tabular-nums ${mark ? MARKED[mark] : ''}`}>
        {isLocked(fixture) ? <LockMark reason={fixture.lock} className="mr-1 text-large text-soft" /> : null}
        {address === '' ? <span className="text-large font-normal text-soft">{PHONE_WORDS.notPatched}</span> : address}
      </span>
      <span className="w-full truncate">
        {first ? (
          <>
            <Mark severity={first.severity} className="mr-1" />
            {findingSentenceFor(first, id, rig)}
          </>
        ) : (
          <span className="text-soft">{cellText(rig, fixture, 'type')}</span>
        )}
      </span>
    </button>
  );
}
