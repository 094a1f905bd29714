import { describe, expect, it } from 'vitest';
import { type Rng, seededRng } from '#base/rng.ts';
import { rowsOf, tableOf } from '#base/table.ts';
import { randomEdit, randomRig } from '#tests/support/random-rig.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { isCardKey, tickKey } from '../model/card.ts';
import { removeCard, setCard } from '../model/card-edits.ts';
import type { Edit } from '../model/edit.ts';
import { fixtureId } from '../model/ids.ts';
import { EMPTY_RIG, type Rig } from '../model/rig.ts';
import { proposalEdits } from './proposal.ts';
import {
  allLines,
  bodilyLines,
  countStates,
  followRestoreTasks,
  hasHappened,
  lineKey,
  placeLines,
  restoreSheet,
  restoreTasks,
} from './restore.ts';

const SHAPE = { fixtures: 20, universes: 3 };
const SEEDS = Array.from({ length: 150 }, (_, seed) => seed);
const HASH = 'a'.repeat(64);

/** A house as its record says, and a show that began so and was changed. */
function houseAndShow(seed: number): { readonly record: Rig; readonly show: Rig; readonly rng: Rng } {
  const rng = seededRng(seed + 70_000);
  const record = randomRig(seed, SHAPE);
  const show = applyEdits(
    record,
    Array.from({ length: 1 + rng.int(60) }, () => randomEdit(rng, SHAPE)),
  );
  return { record, show, rng };
}

/** A rig without what happened to it. */
const asItIs = (rig: Rig): Rig => ({
  ...rig,
  cards: tableOf([...rowsOf(rig.cards)].filter(({ kind }) => !hasHappened(kind))),
});

const sheetOf = ({ record, show }: { readonly record: Rig; readonly show: Rig }) => restoreSheet(show, record, HASH);
const keysOf = (now: Rig, record: Rig) => {
  const { units, rig } = restoreTasks(now, record);
  return [...units, ...rig].map(({ key }) => key).sort();
};

describe('the restore sheet', () => {
  it('[RS1] has all that is to be done: done in any order it leaves the rig as its record says, but for what happened', () => {
    for (const seed of SEEDS) {
      const pair = houseAndShow(seed);
      const lines = allLines(sheetOf(pair));
      const shuffled = lines.map((line) => [pair.rng.next(), line] as const).sort(([a], [b]) => a - b);
      const done = shuffled.reduce((rig, [, { task }]) => applyEdits(rig, task.edits), pair.show);
      expect(asItIs(done), `seed ${seed}`).toEqual(asItIs(pair.record));
      const happened = [...rowsOf(done.cards)].filter(({ kind }) => hasHappened(kind));
      expect(happened).toEqual([...rowsOf(pair.show.cards)].filter(({ kind }) => hasHappened(kind)));
    }
  });

  it('[RS2] has nothing that is so already, each thing once, and nothing one could leave out', () => {
    for (const seed of SEEDS.slice(0, 40)) {
      const pair = houseAndShow(seed);
      const lines = allLines(sheetOf(pair));
      expect(new Set(lines.map(({ task }) => task.key)).size).toBe(lines.length);
      for (const left of lines) {
        expect(applyEdits(pair.show, left.task.edits), `seed ${seed}`).not.toEqual(pair.show);
        const rest = lines.filter((line) => line !== left);
        const done = rest.reduce((rig, { task }) => applyEdits(rig, task.edits), pair.show);
        expect(asItIs(done), `seed ${seed}, ${left.task.key}`).not.toEqual(asItIs(pair.record));
      }
      expect(allLines(restoreSheet(pair.record, pair.record, HASH))).toEqual([]);
    }
  });

  it('[RS3] counts a tick of its record only, and loses none', () => {
    for (const seed of SEEDS) {
      const { record, show, rng } = houseAndShow(seed);
      const lines = allLines(restoreSheet(show, record, HASH));
      const ticked = lines.filter(() => rng.int(2) === 0);
      const cells = { by: 'Ona Reeve', at: '2026-11-25T10:00:00.000Z' };
      const edits = ticked.flatMap(({ key }, nth) =>
        setCard('tick', key, { state: nth % 2 === 0 ? 'done' : 'stays', ...cells }),
      );
      const gone = [...rowsOf(show.cards)].filter(({ kind }) => kind === 'tick');
      const bare = applyEdits(
        show,
        gone.flatMap(({ key }) => removeCard(show, 'tick', key)),
      );
      const other = setCard('tick', tickKey('b'.repeat(64), 'f1 move'), { state: 'done', ...cells });
      const loose = setCard('tick', tickKey(HASH, 'f1 nothing-of-the-kind'), { state: 'done', ...cells });
      const sheet = restoreSheet(applyEdits(bare, [...edits, ...other, ...loose]), record, HASH);
      const after = allLines(sheet);
      expect(after.filter(({ state }) => state !== 'open').map(({ key }) => key)).toEqual(ticked.map(({ key }) => key));
      expect(countStates(after).done).toBe(Math.ceil(ticked.length / 2));
      expect(sheet.elsewhere).toBe(1);
      expect(sheet.loose.map(({ task }) => task)).toEqual(['f1 nothing-of-the-kind']);
      for (const { key } of after) expect(isCardKey('tick', key), JSON.stringify(key)).toBe(true);
    }
  });

  it('[RS3] takes the tick of a line that is there no more for a loose one', () => {
    const { record, show } = example();
    const [line] = bodilyLines(restoreSheet(show, record, HASH));
    const tick = setCard('tick', line?.key ?? '', { state: 'done', by: 'Ona Reeve', at: '' });
    const undone = applyEdits(show, [...tick, ...(line?.task.edits ?? [])]);
    const sheet = restoreSheet(undone, record, HASH);
    expect(sheet.loose.map(({ task }) => task)).toEqual([line?.task.key]);
    expect(allLines(sheet).every(({ state }) => state === 'open')).toBe(true);
  });

  it('[RS4] lists by place what somebody goes there for, and apart what is on paper only', () => {
    const { record, show } = example();
    const sheet = restoreSheet(show, record, HASH);
    expect(
      sheet.places.map(
        (place) =>
          `${place.position}: ${placeLines(place)
            .map(({ task }) => task.key)
            .join(', ')}`,
      ),
    ).toEqual(['Apron: c hang', 'Bridge: a set-mode, a set-address, b take-down']);
    expect(sheet.places[1]?.units.map(({ id }) => id)).toEqual(['a', 'b']);
    expect(sheet.rig.map(({ task }) => task.kind)).toEqual(['network']);
    expect(sheet.paper.map(({ task }) => task.kind)).toEqual(['paper', 'record']);
  });

  it('[RS1] followed through edits and ticks is the same as worked out anew', () => {
    for (const seed of SEEDS.slice(0, 60)) {
      const { record, show, rng } = houseAndShow(seed);
      const follow = followRestoreTasks(record);
      let now = show;
      for (let step = 0; step < 12; step++) {
        const before = follow(now);
        const isTick = rng.int(2) === 0;
        const edits = isTick
          ? setCard('tick', lineKey(HASH, `f${rng.int(20)} move`), { state: 'done', by: `Person ${step}` })
          : [randomEdit(rng, SHAPE)];
        now = applyEdits(now, edits);
        const tasks = follow(now);
        if (isTick) expect(tasks).toBe(before);
        expect(tasks, `seed ${seed}, step ${step}`).toEqual(restoreTasks(now, record));
      }
    }
  });

  it('[RS3] cuts the key of a tick that no card could have', () => {
    const key = lineKey(HASH, `card limit\u001f${'x'.repeat(1999)}`);
    expect(isCardKey('tick', key)).toBe(true);
  });
});

describe('what stays as it is', () => {
  it('[RS6] proposed to the house and taken, it is on the sheet no more, and all else still is', () => {
    for (const seed of SEEDS) {
      const { record, show, rng } = houseAndShow(seed);
      const keys = keysOf(show, record);
      const stays = new Set(keys.filter(() => rng.int(3) === 0));
      const taken = applyEdits(record, proposalEdits(record, show, stays));
      expect(keysOf(show, taken), `seed ${seed}`).toEqual(keys.filter((key) => !stays.has(key)));
      expect(proposalEdits(record, show, new Set())).toEqual([]);
    }
  });
});

function example(): { readonly record: Rig; readonly show: Rig } {
  const unit = (id: string, cells: object): Edit => ({ kind: 'add-fixture', fixture: fixtureId(id), cells });
  const record = applyEdits(EMPTY_RIG, [
    { kind: 'set-position', name: 'Bridge', order: 2 },
    { kind: 'set-position', name: 'Apron', order: 1 },
    unit('a', { position: 'Bridge', unit: '1', type: 'Spot', mode: '16', address: 1 }),
    unit('c', { position: 'Apron', unit: '1', type: 'Spot' }),
    ...setCard('node', 'n1', { name: 'Beam', role: 'node', ports: 4 }),
  ]);
  const show = applyEdits(record, [
    { kind: 'set-cell', fixture: fixtureId('a'), field: 'address', value: 40 },
    { kind: 'set-cell', fixture: fixtureId('a'), field: 'mode', value: '24' },
    { kind: 'set-cell', fixture: fixtureId('a'), field: 'channel', value: 7 },
    { kind: 'remove-fixture', fixture: fixtureId('c') },
    unit('b', { position: 'Bridge', unit: '2', type: 'Wash' }),
    { kind: 'set-universe', universe: 1 as never, label: 'Front' },
    ...setCard('node', 'n1', { ports: 8 }),
    ...setCard('fault', 'x1', { unit: 'a', what: 'Does not strike' }),
  ]);
  return { record, show };
}
