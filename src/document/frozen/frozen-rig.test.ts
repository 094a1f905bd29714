import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { rowsOf, tableOf } from '#base/table.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import { randomPlan } from '#tests/support/random-plan.ts';
import { applyPlan } from '../edit/apply-plan.ts';
import { readRig } from '../read/rig-reader.ts';
import { createRigDoc, FORMAT } from '../schema/rig-doc.ts';
import { freezeRig, thawRig } from './frozen-rig.ts';

/** A rig as a document of many random edits reads. */
function someRig(seed: number): Rig {
  const rng = seededRng(seed);
  const doc = createRigDoc();
  for (let plan = 0; plan < 60; plan++) applyPlan(doc, randomPlan(rng, 20, 8), 'test');
  return readRig(doc);
}

describe('a frozen rig', () => {
  it('[DO60] [DO61] is thawed as it was', () => {
    for (let seed = 0; seed < 100; seed++) {
      const rig = someRig(seed);
      expect(thawRig(freezeRig(rig)), `seed ${seed}`).toEqual({ ok: true, value: rig });
    }
    expect(thawRig(freezeRig(EMPTY_RIG))).toEqual({ ok: true, value: EMPTY_RIG });
  });

  it('[DO60] is the same text for the same rig, whatever the order of its rows', () => {
    const rig = someRig(5);
    const shuffled = { ...rig, fixtures: tableOf([...rowsOf(rig.fixtures)].reverse()) };
    expect(freezeRig(shuffled)).toBe(freezeRig(rig));
  });

  it('[DO61] is refused when anything of it cannot be read', () => {
    const text = freezeRig(someRig(3));
    const frozen = JSON.parse(text);
    const withPart = (part: object) => thawRig(JSON.stringify({ ...frozen, ...part }));
    expect(withPart({ format: FORMAT + 1 })).toEqual({ ok: false, error: 'newer' });
    const bad = [
      { fixtures: [...frozen.fixtures, frozen.fixtures[0]] },
      { fixtures: [['', 1]] },
      { fixtures: [['f1', { a: 1 }]] },
      { fields: frozen.fields.slice(0, 3) },
      { fields: frozen.fields.map((field: string) => `${field}x`) },
      { modes: [['no key of its own', ['Spot', '16', [16]]]] },
      { positions: [['bridge', ['Bridge']]] },
      { universes: [['0', ['Floor']]] },
      { notes: [['n1', [1, 1]]] },
      { cards: [['node', 'a.b', { name: 'N' }]] },
      { cards: [['node', 'n1', { name: 'N', none: 1 }]] },
      { cards: [['nothing', 'n1', { name: 'N' }]] },
      { signatures: [['no hazard', ['Ona', 'today', []]]] },
    ];
    for (const part of bad)
      expect(withPart(part), JSON.stringify(part).slice(0, 80)).toEqual({ ok: false, error: 'malformed' });
    for (const other of ['', 'null', '[]', '{}', text.slice(0, -1), `${text}}`])
      expect(thawRig(other)).toEqual({ ok: false, error: 'malformed' });
  });

  // When this fails, frozen rigs of before have other hashes: raise the format, and read those of before as they were.
  it('[DO60] has the bytes that this format has', () => {
    const hash = createHash('sha256');
    for (let seed = 0; seed < 20; seed++) hash.update(freezeRig(someRig(seed)));
    expect({ format: FORMAT, hash: hash.digest('hex').slice(0, 16) }).toEqual({ format: 4, hash: '27fd07fd05d1a236' });
  });
});
