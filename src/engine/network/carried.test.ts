import { describe, expect, it } from 'vitest';
import { applyEdits } from '../model/apply-edits.ts';
import type { CardEdit } from '../model/card.ts';
import { setCard } from '../model/card-edits.ts';
import { plantOf } from '../model/plant.ts';
import { EMPTY_RIG } from '../model/rig.ts';
import { carriedByPorts, carriedByRun } from './carried.ts';

const plantWith = (...edits: readonly (readonly CardEdit[])[]) => plantOf(applyEdits(EMPTY_RIG, edits.flat()).cards);

const BEAM = [
  ...setCard('node', 'beam', { name: 'Beam', ports: 3 }),
  ...setCard('delivery', '1', { by: 'sacn', sacn: 11, portAddress: 4 }),
  ...setCard('delivery', '2', { by: 'art-net', sacn: 12, portAddress: 4 }),
  ...setCard('port', 'beam.1', { by: 'sacn', number: 11 }),
  ...setCard('port', 'beam.2', { by: 'art-net', number: 4 }),
  ...setCard('port', 'beam.3', { by: 'art-net', number: 11 }),
];

describe('what comes out of a port', () => {
  it('[NW4] is what travels by its protocol under its number, and by no other', () => {
    expect([...carriedByPorts(plantWith(BEAM))]).toEqual([
      ['beam.1', [1]],
      ['beam.2', [2]],
    ]);
  });

  it('[NW4] is nothing of a node that is gone, and of a port that it does not have', () => {
    expect(carriedByPorts(plantWith(BEAM, setCard('node', 'beam', { name: null }))).size).toBe(0);
    expect([...carriedByPorts(plantWith(BEAM, setCard('node', 'beam', { ports: 1 }))).keys()]).toEqual(['beam.1']);
  });

  it('[NW4] is two universes when two travel under one number', () => {
    const plant = plantWith(BEAM, setCard('delivery', '7', { by: 'sacn', sacn: 11 }));
    expect(carriedByPorts(plant).get('beam.1')).toEqual([1, 7]);
  });
});

describe('what a run carries', () => {
  const carried = (name: string, ...edits: readonly (readonly CardEdit[])[]) => {
    const plant = plantWith(BEAM, ...edits);
    const run = plant.runs.get(name);
    return run === undefined ? undefined : carriedByRun(plant, run);
  };
  const onPort = setCard('run', 'a', { name: 'A', from: 'port beam.2' });
  const split = setCard('splitter', 's', { name: 'Split', run: 'A', outputs: 4 });

  it('[NW5] is what its port carries, or what the desk sends into it', () => {
    expect(carried('a', onPort)).toEqual([2]);
    expect(carried('a', setCard('run', 'a', { name: 'A', from: 'cable 9' }))).toEqual([9]);
    expect(carried('a', setCard('run', 'a', { name: 'A', from: 'port beam.3' }))).toEqual([]);
  });

  it('[NW5] is behind splitters what comes into the first', () => {
    const behind = setCard('run', 'b', { name: 'B', from: 'splitter s.2' });
    expect(carried('b', onPort, split, behind)).toEqual([2]);
  });

  it('[NW5] is not known from nowhere, from what is gone, and in a ring', () => {
    const ring = [...setCard('run', 'a', { name: 'A', from: 'splitter s.1' }), ...split];
    expect(carried('a', ring)).toBeNull();
    expect(carried('a', setCard('run', 'a', { name: 'A' }))).toBeNull();
    expect(carried('a', setCard('run', 'a', { name: 'A', from: 'port beam.9' }))).toBeNull();
    expect(carried('a', setCard('run', 'a', { name: 'A', from: 'splitter s.1' }))).toBeNull();
  });
});
