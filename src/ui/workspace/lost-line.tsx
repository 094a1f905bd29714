import { useSyncExternalStore } from 'react';
import { getRow } from '#base/table.ts';
import { unitName } from '#words/findings.ts';
import { cellName, LOST_WORDS, valueWords } from '#words/sheet.ts';
import type { Sheet } from '../grid/sheet.ts';
import { Button } from '../kit/button.tsx';
import { Mark } from '../kit/mark.tsx';
import type { LostValue } from '../live/lost-list.ts';

/** Says which values of mine gave way to another's set at the same time, and puts them back on asking. */
export function LostLines({ sheet }: { readonly sheet: Sheet }) {
  const { store } = sheet;
  const lost = useSyncExternalStore(store.subscribeLost, store.lost);
  return (
    <div role="status" className="contents">
      {lost.map((value) => (
        <LostLine key={`${value.fixture} ${value.field}`} sheet={sheet} value={value} />
      ))}
    </div>
  );
}

function LostLine({ sheet, value }: { readonly sheet: Sheet; readonly value: LostValue }) {
  const { store } = sheet;
  const { fixture, field, mine, theirs, by } = value;
  const unit = unitName(getRow(store.rig().fixtures, fixture));
  const putBack = () => {
    const result = store.putBack(value);
    if (!result.ok) sheet.set({ notice: { kind: 'refused', refusal: result.error } });
  };
  return (
    <div className="flex flex-wrap items-center gap-x-4 gap-y-1 border-b border-caution bg-selected px-4 py-1 sm:px-5">
      <p>
        <Mark severity="caution" className="mr-2" />
        {LOST_WORDS.told(by, cellName(unit, field), valueWords(field, theirs), valueWords(field, mine))}
      </p>
      <Button onClick={putBack}>{LOST_WORDS.putBack}</Button>
      <Button onClick={() => store.dismiss(value)}>{LOST_WORDS.dismiss}</Button>
    </div>
  );
}
