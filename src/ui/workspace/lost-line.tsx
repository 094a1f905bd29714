import { useSyncExternalStore } from 'react';
import { getRow } from '#base/table.ts';
import type { Rig } from '#engine/model/rig.ts';
import { unitName } from '#words/findings.ts';
import { cellName, fieldName, LOST_WORDS, valueWords } from '#words/sheet.ts';
import type { Sheet } from '../grid/sheet.ts';
import { Button } from '../kit/button.tsx';
import { Mark } from '../kit/mark.tsx';
import type { Lost } from '../live/lost-list.ts';

/** Says which values and units of mine gave way to what another did at the same time, and puts them back on asking. */
export function LostLines({ sheet }: { readonly sheet: Sheet }) {
  const { store } = sheet;
  const lost = useSyncExternalStore(store.subscribeLost, store.lost);
  return (
    <div role="status" className="contents">
      {lost.map((one) => (
        <LostLine key={`${one.fixture} ${one.kind === 'value' ? one.field : ''}`} sheet={sheet} lost={one} />
      ))}
    </div>
  );
}

function LostLine({ sheet, lost }: { readonly sheet: Sheet; readonly lost: Lost }) {
  const { store } = sheet;
  const putBack = () => {
    const result = store.putBack(lost);
    if (!result.ok) sheet.set({ notice: { kind: 'refused', refusal: result.error } });
  };
  return (
    <div className="flex flex-wrap items-center gap-x-4 gap-y-1 border-b border-caution bg-selected px-4 py-1 sm:px-5">
      <p>
        <Mark severity="caution" className="mr-2" />
        {sentence(lost, store.rig())}
      </p>
      <Button onClick={putBack}>{lost.kind === 'unit' ? LOST_WORDS.putUnitBack : LOST_WORDS.putBack}</Button>
      <Button onClick={() => store.dismiss(lost)}>
        {lost.kind === 'unit' ? LOST_WORDS.leaveUnit : LOST_WORDS.dismiss}
      </Button>
    </div>
  );
}

function sentence(lost: Lost, rig: Rig): string {
  if (lost.kind === 'unit') return LOST_WORDS.removed(unitName(lost.row), lost.fields.map(fieldName));
  const { fixture, field, mine, theirs, by } = lost;
  const cell = cellName(unitName(getRow(rig.fixtures, fixture)), field);
  return LOST_WORDS.told(by, cell, valueWords(field, theirs), valueWords(field, mine));
}
