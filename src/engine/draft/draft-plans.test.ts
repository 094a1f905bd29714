import { describe, expect, it } from 'vitest';
import { present } from '#base/assert.ts';
import { type Rng, seededRng } from '#base/rng.ts';
import { applyDraftEdits } from '#document/draft/apply-draft-edits.ts';
import { createDraftDoc } from '#document/draft/draft-doc.ts';
import { readDraft } from '#document/draft/draft-reader.ts';
import { countedIds, draftOfEdits, randomDraft, randomDraftEdits } from '#tests/support/random-draft.ts';
import type { Draft, DraftEdit, DraftMode } from './draft.ts';
import { addRows, moveRows, nextSlot, removeRows, renumberFrom, repeatRows, unrepeat } from './draft-plans.ts';
import { addMode, copyMode, removeMode } from './mode-plans.ts';
import { readSlots } from './slots-text.ts';
import { typeOfDraft } from './type-of-draft.ts';

/** A draft on which plans are carried out, and what it reads as after each. */
function desk(edits: readonly DraftEdit[]) {
  const doc = createDraftDoc(edits);
  const cells = () => doc.getMap('cells').size;
  return {
    cells,
    draft: () => readDraft(doc),
    carryOut(plan: readonly DraftEdit[]): Draft {
      const made = applyDraftEdits(doc, plan, 'me');
      if (!made.ok) throw new Error(JSON.stringify(made.error));
      return readDraft(doc);
    },
  };
}

const modeAt = (draft: Draft, at = 0): DraftMode => present(draft.modes[at], `no mode ${at}`);
const rowsOf = (draft: Draft) => modeAt(draft).rows.map((row) => `${row.id}:${row.slots}`);

const basic: readonly DraftEdit[] = [{ of: 'mode', mode: 'm', field: 'order', value: 1 }];

const someRows = (rng: Rng, mode: DraftMode) => mode.rows.filter(() => rng.int(2) === 0).map((row) => row.id);

describe('plans for charts', () => {
  it('[DR20] added rows stand below the row named, in order, and get the next slots of their break', () => {
    const { draft, carryOut } = desk(basic);
    const ids = countedIds('r');
    carryOut(addRows(draft(), 'm', null, [{ name: 'A' }, { slots: '5-6' }, {}, { break: '2' }, { slots: '' }], ids));
    expect(rowsOf(draft())).toEqual(['r1:1', 'r2:5-6', 'r3:7', 'r4:1', 'r5:']);
    expect([nextSlot(modeAt(draft()), 1), nextSlot(modeAt(draft()), 2), nextSlot(modeAt(draft()), 3)]).toEqual([
      8, 2, 1,
    ]);
    carryOut(addRows(draft(), 'm', 'r1', [{}, {}], ids));
    carryOut(addRows(draft(), 'm', null, [{ slots: '20' }], ids));
    expect(rowsOf(draft()).slice(0, 5)).toEqual(['r8:20', 'r1:1', 'r6:8', 'r7:9', 'r2:5-6']);
  });

  it('[DR20] keeps the order of all others however often rows go between the same two', () => {
    const { draft, carryOut } = desk(basic);
    const ids = countedIds('r');
    carryOut(addRows(draft(), 'm', null, [{}, {}], ids));
    const wanted = ['r1', 'r2'];
    for (let time = 0; time < 100; time++) {
      carryOut(addRows(draft(), 'm', 'r1', [{}], ids));
      wanted.splice(1, 0, `r${time + 3}`);
    }
    expect(modeAt(draft()).rows.map((row) => row.id)).toEqual(wanted);
  });

  it('[DR21] moved rows stand together below the row named, all others in their order', () => {
    for (let seed = 1; seed <= 150; seed++) {
      const rng = seededRng(seed);
      const { draft, carryOut } = desk([...basic, ...randomDraftEdits(rng, 200).filter((edit) => edit.of !== 'mode')]);
      const mode = draft().modes.find((each) => each.id === 'm') ?? modeAt(draft());
      const added = carryOut(
        addRows(
          draft(),
          mode.id,
          null,
          Array.from({ length: 6 }, () => ({})),
          countedIds('x'),
        ),
      );
      const rows = modeAt(added).rows.map((row) => row.id);
      const moving = someRows(rng, modeAt(added));
      const after = rng.pick([null, ...rows]);
      const now = modeAt(carryOut(moveRows(added, mode.id, moving, after))).rows.map((row) => row.id);
      const upTo = rows.slice(0, after === null ? 0 : rows.indexOf(after) + 1);
      const stays = (row: string) => !moving.includes(row);
      const below = rows.slice(upTo.length).filter(stays);
      expect(now, `seed ${seed}`).toEqual([...upTo.filter(stays), ...rows.filter((row) => !stays(row)), ...below]);
    }
  });

  it('[DR22] removing rows and modes leaves no cell of theirs, and no repeat without rows', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const rng = seededRng(seed);
      const start = randomDraft(rng);
      const ids = countedIds('x');
      const edits = start.modes.flatMap((mode) => copyMode(start, mode.id, ids));
      const { draft, carryOut, cells } = desk(edits);
      const [first] = draft().modes;
      if (first === undefined) continue;
      const rows = someRows(rng, first);
      const now = carryOut(removeRows(draft(), first.id, rows)).modes.find((each) => each.id === first.id);
      expect(now?.rows.map((row) => row.id)).toEqual(
        first.rows.map((row) => row.id).filter((row) => !rows.includes(row)),
      );
      for (const repeat of now?.repeats ?? []) {
        const had = first.rows.some((row) => row.repeat === repeat.id);
        expect(now?.rows.some((row) => row.repeat === repeat.id)).toBe(had);
      }
      for (const mode of draft().modes) carryOut(removeMode(draft(), mode.id));
      expect(draft().modes).toEqual([]);
      expect(cells(), `seed ${seed}`).toBe(0);
    }
  });

  it('[DR23] a copy of a mode says the same under another name, with ids of its own', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const start = randomDraft(seededRng(seed));
      const [mode] = start.modes;
      if (mode === undefined) continue;
      const both = draftOfEdits([
        ...copyMode(start, mode.id, countedIds('a')),
        ...copyMode(start, mode.id, countedIds('b')),
      ]);
      const plain = (each: DraftMode) => ({
        ...each,
        id: '',
        rows: each.rows.map((row) => cellsOnly(each, row.id)),
        repeats: each.repeats
          .map(({ id: _id, ...rest }) => rest)
          .map((rest) => JSON.stringify(rest))
          .sort(),
      });
      expect(plain(modeAt(both, 1))).toEqual(plain(modeAt(both, 0)));
      const type = typeOfDraft({ ...both, modes: both.modes.map((each) => ({ ...each, kept: '' })) }, null).type;
      expect(type.modes[0]?.channels.map((channel) => channel.offsets)).toEqual(
        typeOfDraft({ ...start, modes: [{ ...mode, kept: '' }] }, null).type.modes[0]?.channels.map(
          (channel) => channel.offsets,
        ),
      );
    }
    const { draft, carryOut } = desk([]);
    const ids = countedIds('m');
    carryOut(addMode(draft(), 'Basic', ids));
    carryOut(addMode(draft(), 'Wide', ids));
    carryOut(copyMode(draft(), 'm1', ids));
    carryOut(copyMode(draft(), 'm1', ids));
    expect(draft().modes.map((each) => each.name)).toEqual(['Basic', 'Basic copy 2', 'Basic copy', 'Wide']);
  });

  it('[DR24] rows are repeated under one name, leave the repeat they were in, and come once again', () => {
    const { draft, carryOut } = desk(basic);
    const ids = countedIds('r');
    carryOut(addRows(draft(), 'm', null, [{}, {}, {}], ids));
    carryOut(repeatRows(draft(), 'm', ['r2', 'r3'], { count: 4, name: 'Pixel' }, ids));
    expect(modeAt(draft()).repeats).toEqual([{ id: 'r4', name: 'Pixel', count: '4', step: '' }]);
    expect(nextSlot(modeAt(draft()), 1)).toBe(10);
    carryOut(repeatRows(draft(), 'm', ['r2', 'r3'], { count: 2, name: 'Cell' }, ids));
    expect(modeAt(draft()).repeats.map((each) => each.name)).toEqual(['Cell']);
    carryOut(unrepeat(draft(), 'm', 'r5'));
    expect([modeAt(draft()).repeats, modeAt(draft()).rows.map((row) => row.repeat)]).toEqual([[], ['', '', '']]);
  });

  it('[DR25] renumbering shifts a row and those of its break below it, widths and distances kept', () => {
    const { draft, carryOut } = desk(basic);
    const ids = countedIds('r');
    const rows = [
      { slots: '1' },
      { slots: '2-3' },
      { slots: '9, 5' },
      { slots: '4', break: '2' },
      { slots: '' },
      { slots: 'x' },
    ];
    carryOut(addRows(draft(), 'm', null, rows, ids));
    carryOut(renumberFrom(draft(), 'm', 'r2', 11));
    expect(rowsOf(draft())).toEqual(['r1:1', 'r2:11-12', 'r3:18, 14', 'r4:4', 'r5:', 'r6:x']);
    expect(renumberFrom(draft(), 'm', 'r5', 3)).toEqual([]);
    expect(renumberFrom(draft(), 'm', 'r3', 0)).toEqual([]);
    carryOut(renumberFrom(draft(), 'm', 'r2', 2));
    expect(rowsOf(draft()).slice(0, 3)).toEqual(['r1:1', 'r2:2-3', 'r3:9, 5']);
    expect(readSlots('9, 5')).toEqual([9, 5]);
  });

  it('[DR26] a mode or row that is not there gives no edits', () => {
    const draft = draftOfEdits(basic);
    const ids = countedIds();
    expect(
      [
        addRows(draft, 'no', null, [{}], ids),
        removeRows(draft, 'm', ['no']),
        moveRows(draft, 'm', ['no'], null),
        repeatRows(draft, 'm', ['no'], { count: 2, name: '' }, ids),
        unrepeat(draft, 'm', 'no'),
        renumberFrom(draft, 'm', 'no', 1),
        copyMode(draft, 'no', ids),
        removeMode(draft, 'no'),
      ].flat(),
    ).toEqual([]);
  });
});

function cellsOnly(mode: DraftMode, rowId: string) {
  const row = present(
    mode.rows.find((each) => each.id === rowId),
    'no row',
  );
  const repeat = mode.repeats.find((each) => each.id === row.repeat);
  return { ...row, id: '', repeat: repeat === undefined ? '' : `${repeat.name} ${repeat.count} ${repeat.step}` };
}
