import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { countingIds } from '#base/random-id.ts';
import { seededRng } from '#base/rng.ts';
import { getRow } from '#base/table.ts';
import { applyPlan } from '#document/edit/apply-plan.ts';
import { createRigDoc } from '#document/schema/rig-doc.ts';
import { checkRig } from '#engine/check/check-rig.ts';
import type { Edit } from '#engine/model/edit.ts';
import { type FixtureId, fixtureId } from '#engine/model/ids.ts';
import { rowsInOrder } from '#engine/model/row-order.ts';
import { movePlan } from '#engine/patch/move-plan.ts';
import { linkAlone } from '../live/link-alone.ts';
import { openRigStore } from '../live/rig-store.ts';
import { cellText } from '../live/rows/cell-text.ts';
import { rowOrder } from '../live/rows/row-order.ts';
import { EVERYTHING } from '../live/rows/view.ts';
import { commandOf } from './commands.ts';
import { lockSelected } from './lock-selected.ts';
import { selectCell, selectedRows, stretchTo } from './selection.ts';
import { createSheet } from './sheet.ts';
import {
  closeCell,
  copySelected,
  leaveCell,
  openCell,
  pasteText,
  removeSelected,
  runCommand,
  takeBack,
} from './sheet-actions.ts';

/** Two people with one rig: what one does reaches the other at `exchange`. */
function twoPeople(rows: number) {
  const first = createRigDoc();
  const edits = Array.from({ length: rows }, (_, n): Edit => {
    const cells = { order: n, position: `LX ${1 + (n % 3)}`, unit: String(n), channel: 100 + n };
    return { kind: 'add-fixture', fixture: fixtureId(`f${n}`), cells };
  });
  applyPlan(first, { name: 'import', edits }, 'seed');
  const second = new Y.Doc();
  Y.applyUpdate(second, Y.encodeStateAsUpdate(first));
  const open = (doc: Y.Doc, name: string) => {
    const link = linkAlone();
    const isMine = (client: number) => client === doc.clientID;
    const store = openRigStore({ doc, link, origin: name, isMine, clock: { now: () => 0 } });
    const kept: unknown[] = [];
    const keeper = { load: () => kept.at(-1), save: (value: unknown) => void kept.push(value) };
    const sheet = createSheet(store, countingIds(name), keeper);
    sheet.open();
    return { doc, link, store, sheet };
  };
  const exchange = () => {
    Y.applyUpdate(second, Y.encodeStateAsUpdate(first, Y.encodeStateVector(second)), 'remote');
    Y.applyUpdate(first, Y.encodeStateAsUpdate(second, Y.encodeStateVector(first)), 'remote');
  };
  return { imke: open(first, 'i'), tomas: open(second, 't'), exchange };
}

type Seat = ReturnType<typeof twoPeople>['imke'];

const key = ({ sheet }: Seat, name: string, held: Partial<Parameters<typeof commandOf>[0]> = {}) => {
  const command = commandOf({ key: name, ctrlKey: false, metaKey: false, shiftKey: false, altKey: false, ...held });
  if (command && 'kind' in command) return runCommand(sheet, command as Parameters<typeof runCommand>[1], 10);
  throw new Error(`no command for ${name}`);
};

const goTo = ({ sheet }: Seat, row: string, column: 'channel' | 'unit' | 'purpose' | 'address' | 'footprint') =>
  sheet.select(selectCell({ row: fixtureId(row), column }));

const type = (seat: Seat, text: string, onward: Parameters<typeof closeCell>[2] = 'down') => {
  openCell(seat.sheet, '');
  const { editing } = seat.sheet.state();
  if (editing) seat.sheet.set({ editing: { ...editing, text } });
  closeCell(seat.sheet, 'cell', onward);
};

const cell = ({ store }: Seat, row: string, column: 'channel' | 'unit' | 'purpose' | 'address') => {
  const fixture = getRow(store.rig().fixtures, row);
  return fixture ? cellText(store.rig(), fixture, column) : undefined;
};

describe('sheet', () => {
  it('types into a cell and goes on to the row below within the group', () => {
    const { imke } = twoPeople(9);
    goTo(imke, 'f0', 'purpose');
    type(imke, 'Specials');
    expect(cell(imke, 'f0', 'purpose')).toBe('Specials');
    expect(imke.sheet.state().selection?.cursor.row).toBe('f3');
    expect(imke.sheet.state().editing).toBeUndefined();
  });

  it('Escape leaves the cell as it was; the footprint never opens', () => {
    const { imke } = twoPeople(3);
    goTo(imke, 'f0', 'unit');
    key(imke, '7');
    leaveCell(imke.sheet);
    expect(cell(imke, 'f0', 'unit')).toBe('0');
    goTo(imke, 'f0', 'footprint');
    key(imke, '7');
    expect(imke.sheet.state().editing).toBeUndefined();
  });

  it('keeps both edits of one row, and undo is mine alone', () => {
    const { imke, tomas, exchange } = twoPeople(3);
    goTo(imke, 'f0', 'purpose');
    type(imke, 'Top');
    goTo(tomas, 'f0', 'channel');
    type(tomas, '7');
    exchange();
    takeBack(imke.sheet, 'undo');
    exchange();
    for (const seat of [imke, tomas])
      expect([cell(seat, 'f0', 'purpose'), cell(seat, 'f0', 'channel')]).toEqual(['', '7']);
    expect(imke.sheet.state().notice).toEqual({ kind: 'undone', plan: 'edit' });
    takeBack(imke.sheet, 'undo');
    expect(imke.sheet.state().notice).toEqual({ kind: 'nothing-to-undo' });
  });

  it('tells who lost a cell, names who is in it, and puts the lost value back', () => {
    const { imke, tomas, exchange } = twoPeople(3);
    for (const seat of [imke, tomas]) goTo(seat, 'f0', 'address');
    const where = { fixture: 'f0', field: 'address' };
    imke.link.setPeople([{ id: 1, name: 'Tomas', colour: 1, where }]);
    tomas.link.setPeople([{ id: 2, name: 'Imke', colour: 2, where }]);
    type(imke, '2:133');
    type(tomas, '2:101');
    exchange();
    const losers = [imke, tomas].filter(({ store }) => store.lost().length > 0);
    expect(losers).toHaveLength(1);
    const loser = losers[0] ?? imke;
    const [lost] = loser.store.lost();
    expect(lost).toMatchObject({ kind: 'value', by: loser === imke ? 'Tomas' : 'Imke' });
    const mine = loser === imke ? '2:133' : '2:101';
    expect(cell(loser, 'f0', 'address')).not.toBe(mine);
    if (lost) loser.store.putBack(lost);
    exchange();
    for (const seat of [imke, tomas]) expect(cell(seat, 'f0', 'address')).toBe(mine);
    expect(loser.store.lost()).toEqual([]);
  });

  it('tells who wrote into a row that another removed, and puts the unit back with what was written', () => {
    const { imke, tomas, exchange } = twoPeople(3);
    goTo(imke, 'f0', 'purpose');
    type(imke, 'Top');
    goTo(tomas, 'f0', 'purpose');
    removeSelected(tomas.sheet);
    exchange();
    expect(imke.store.row(fixtureId('f0'))).toBeUndefined();
    expect(tomas.store.lost()).toEqual([]);
    const [lost] = imke.store.lost();
    expect(lost).toMatchObject({ kind: 'unit', fixture: 'f0', fields: ['purpose'] });
    if (lost) imke.store.putBack(lost);
    exchange();
    for (const seat of [imke, tomas]) expect(cell(seat, 'f0', 'purpose')).toBe('Top');
    expect(imke.store.lost()).toEqual([]);
  });

  it('copies a range as text, and pasted it comes out the same, also past the last row', () => {
    const { imke } = twoPeople(6);
    imke.sheet.setView({ grouping: 'none', sort: null, filter: EVERYTHING });
    goTo(imke, 'f0', 'channel');
    imke.sheet.select(
      stretchTo(selectCell({ row: fixtureId('f0'), column: 'channel' }), { row: fixtureId('f2'), column: 'unit' }),
    );
    const text = copySelected(imke.sheet);
    expect(text).toBe('100\tLX 1\t0\n101\tLX 2\t1\n102\tLX 3\t2\n');
    goTo(imke, 'f5', 'channel');
    pasteText(imke.sheet, text);
    const rows = rowsInOrder(imke.store.rig());
    expect(rows.map(({ channel }) => channel)).toEqual([100, 101, 102, 103, 104, 100, 101, 102]);
    goTo(imke, 'f5', 'footprint');
    pasteText(imke.sheet, '9\n');
    expect(imke.sheet.state().notice).toEqual({ kind: 'left-out', cells: 1 });
  });

  it('says it when a row goes while one types in it, with what was typed', () => {
    const { imke, tomas, exchange } = twoPeople(3);
    goTo(imke, 'f0', 'purpose');
    key(imke, 'S');
    goTo(tomas, 'f0', 'purpose');
    key(tomas, 'Delete', { ctrlKey: true });
    exchange();
    expect(imke.sheet.state().editing).toBeUndefined();
    expect(imke.sheet.state().notice).toEqual({ kind: 'row-gone', text: 'S' });
    expect(imke.sheet.state().selection?.cursor.row).not.toBe('f0');
  });

  it('refuses a reader in words, and writes nothing', () => {
    const { imke } = twoPeople(3);
    imke.link.setStatus({ state: 'read-only', detail: '' });
    goTo(imke, 'f0', 'unit');
    key(imke, 'Delete');
    expect(imke.sheet.state().notice).toEqual({ kind: 'refused', refusal: { code: 'read-only' } });
    key(imke, 'x');
    expect(imke.sheet.state().editing).toBeUndefined();
    expect(cell(imke, 'f0', 'unit')).toBe('0');
  });

  it('[LK3] keeps a locked address from typing, clearing, pasting and a plan looked at before it was locked', () => {
    const { imke, tomas, exchange } = twoPeople(3);
    const address = (id: string) => cell(imke, id, 'address');
    goTo(imke, 'f0', 'address');
    type(imke, '9');
    exchange();
    const moved = movePlan(imke.store.rig(), [fixtureId('f0')], { by: 1 });
    goTo(tomas, 'f0', 'address');
    lockSelected(tomas.sheet, 'Tomas');
    expect(tomas.sheet.state().notice).toEqual({ kind: 'locks', way: 'locked', units: 1 });
    exchange();
    const refusal = { code: 'locked', fixture: 'f0' };
    expect(moved.ok && imke.store.apply(moved.value)).toEqual({ ok: false, error: refusal });
    goTo(imke, 'f0', 'address');
    key(imke, '7');
    expect(imke.sheet.state()).toMatchObject({ editing: undefined, notice: { kind: 'no-plan', refusal } });
    key(imke, 'Delete');
    expect(imke.sheet.state().notice).toEqual({ kind: 'refused', refusal });
    pasteText(imke.sheet, '1:40');
    expect(imke.sheet.state().notice).toEqual({ kind: 'refused', refusal });
    expect(address('f0')).toBe('1:9');
    // Undo takes back what I did, locked since or not; what is locked may be written otherwise.
    expect(imke.store.undo()).toBe('edit');
    expect(address('f0')).toBe('');
    lockSelected(imke.sheet, 'Imke');
    expect(imke.sheet.state().notice).toEqual({ kind: 'locks', way: 'unlocked', units: 1 });
    key(imke, '7');
    expect(imke.sheet.state().editing?.text).toBe('7');
  });

  it('Tab past the last cell leaves the sheet to the browser', () => {
    const { imke } = twoPeople(3);
    key(imke, 'End', { ctrlKey: true });
    expect(key(imke, 'Tab')).toBe(false);
    expect(key(imke, 'Tab', { shiftKey: true })).toBe(true);
  });
});

describe('store', () => {
  it('after any edits of two people holds what a fresh look at the document gives, and tells just the rows that changed', () => {
    const { imke, tomas, exchange } = twoPeople(24);
    const rng = seededRng(4);
    const told = new Set<FixtureId>();
    const seen = new Map<FixtureId, unknown>();
    const look = () => {
      seen.clear();
      for (const { id } of rowsInOrder(imke.store.rig())) seen.set(id, imke.store.row(id));
    };
    for (const { id } of rowsInOrder(imke.store.rig())) imke.store.subscribeRow(id, () => told.add(id));
    for (let step = 0; step < 200; step++) {
      const seat = rng.pick([imke, tomas]);
      const rows = rowsInOrder(seat.store.rig());
      if (rows.length < 4) break;
      seat.sheet.select(
        selectCell({ row: rng.pick(rows).id, column: rng.pick(['channel', 'unit', 'address', 'purpose'] as const) }),
      );
      look();
      told.clear();
      if (rng.int(12) === 0) key(seat, 'Delete', { ctrlKey: true });
      else type(seat, rng.pick(['1', '2:9', 'x', '', '4A']));
      if (rng.int(3) === 0) exchange();
      const changed = [...seen].filter(([id, view]) => imke.store.row(id) !== view).map(([id]) => id);
      for (const id of changed) expect(told, `step ${step}`).toContain(id);
      for (const { store, sheet } of [imke, tomas]) {
        expect(store.findings()).toEqual(checkRig(store.rig()));
        const fresh = rowOrder(store.rig(), sheet.state().view, (id) => store.findingsOf(id).length > 0);
        expect(sheet.state().layout).toEqual(fresh.layout);
        const { selection } = sheet.state();
        if (selection) expect(selectedRows(sheet.ground(), selection).length).toBeGreaterThan(0);
      }
    }
  });
});
