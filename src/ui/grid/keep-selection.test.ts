import { describe, expect, it } from 'vitest';
import { countingIds } from '#base/random-id.ts';
import { applyPlan } from '#document/edit/apply-plan.ts';
import { createRigDoc } from '#document/schema/rig-doc.ts';
import type { Edit } from '#engine/model/edit.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { chosenUnits } from '../live/chosen-units.ts';
import { linkAlone } from '../live/link-alone.ts';
import { openRigStore } from '../live/rig-store.ts';
import { keepSelection } from './keep-selection.ts';
import { selectCell, selectedRows, stretchTo } from './selection.ts';
import { createSheet } from './sheet.ts';

/** A rig of five units along one bar, and a way to open a sheet of it. */
function fiveUnits() {
  const doc = createRigDoc();
  const edits = [0, 1, 2, 3, 4].map((n): Edit => {
    const cells = { order: n, position: 'LX 1', unit: String(n) };
    return { kind: 'add-fixture', fixture: fixtureId(`f${n}`), cells };
  });
  applyPlan(doc, { name: 'import', edits }, 'seed');
  const isMine = () => true;
  const store = openRigStore({ doc, link: linkAlone(), origin: 'me', isMine, clock: { now: () => 0 } });
  const open = () => createSheet(store, countingIds('n'), { load: () => null, save: () => undefined });
  return { store, open };
}

const ids = (text: string) => text.split(' ').map(fixtureId);
const selected = (sheet: ReturnType<typeof createSheet>) => {
  const { selection } = sheet.state();
  return selection === undefined ? [] : selectedRows(sheet.ground(), selection);
};

describe('what is selected in the sheet', () => {
  it('is kept for the other pages of the rig when the sheet is left', () => {
    const { store, open } = fiveUnits();
    const sheet = open();
    const leave = keepSelection(sheet);
    const [first, last] = [fixtureId('f1'), fixtureId('f3')];
    sheet.select(stretchTo(selectCell({ row: first, column: 'unit' }), { row: last, column: 'unit' }));
    leave();
    expect(chosenUnits(store).ids()).toEqual(ids('f1 f2 f3'));
    const again = open();
    keepSelection(again);
    expect(selected(again)).toEqual(ids('f1 f2 f3'));
  });

  it('is what was chosen elsewhere: all of it where it stands together, else its first, without what is gone', () => {
    const { store, open } = fiveUnits();
    const withChosen = (text: string) => {
      chosenUnits(store).choose(ids(text));
      const sheet = open();
      keepSelection(sheet);
      return selected(sheet);
    };
    expect(withChosen('f2 f3 f4')).toEqual(ids('f2 f3 f4'));
    expect(withChosen('f1 f4')).toEqual(ids('f1'));
    expect(withChosen('gone f3')).toEqual(ids('f3'));
    expect(withChosen('gone')).toEqual(ids('f0'));
  });
});
