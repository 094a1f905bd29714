import { describe, expect, it } from 'vitest';
import { describedRun, lineRig } from '#tests/support/line-rig.ts';
import { findingSentence } from '#words/findings.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { setCard } from '../model/card-edits.ts';
import type { Edit } from '../model/edit.ts';
import { PLANT_RULES } from '../model/plant-trouble.ts';
import { checkRig } from './check-rig.ts';

type Units = Parameters<typeof lineRig>[0];

/** What is found of runs: severity, sentence and the units it names. */
function said(units: Units, ...edits: readonly (readonly Edit[])[]): string[] {
  const rig = applyEdits(lineRig(units), edits.flat());
  const found = checkRig(rig).filter(({ rule }) => (PLANT_RULES as readonly string[]).includes(rule));
  return found.map((finding) => `${finding.severity}: ${findingSentence(finding, rig)}`);
}

/** So many units on run A, one after the other, in universe 1. */
const line = (count: number, cells: Omit<Units[number], 'id'> = {}): Units =>
  Array.from({ length: count }, (_, at) => ({
    id: `u${at + 1}`,
    position: 'P',
    unit: String(at + 1),
    run: 'A',
    along: at + 1,
    address: 1,
    ...cells,
  }));
const ended = (cells: Parameters<typeof describedRun>[1] = {}) => describedRun('A', { end: 'terminated', ...cells });
const split = (cells: object = {}) =>
  setCard('splitter', 's', { name: 'Split', run: 'A', along: 99, outputs: 2, ...cells });

describe('unit loads', () => {
  // 32 unit loads on a segment: ANSI E1.11 by EIA-485, from device manuals.
  it('[RN4] 32 may be on a segment, and a splitter is one of them', () => {
    expect(said(line(32), ended())).toEqual([]);
    expect(said(line(31), ended(), split())).toEqual([]);
    expect(said(line(32), ended(), split({ along: 0 }))).toEqual([
      'caution: Run “A” has 33 unit loads on one segment, 1 more than the 32 of EIA-485 (ANSI E1.11), and beyond them P · 32. Begin another segment at a splitter',
    ]);
  });

  it('[RN4] an output of a splitter begins another segment', () => {
    const behind = line(20).map((unit) => ({ ...unit, id: `b${unit.id}`, position: 'Q', run: 'B' }));
    const b = describedRun('B', { from: 'splitter s.1', end: 'terminated' });
    expect(said([...line(20), ...behind], ended(), split(), b)).toEqual([]);
  });
});

describe('length', () => {
  it('[RN5] is held against the run, the rig, else 300 m, and names the units beyond', () => {
    expect(said(line(2, { cable: 150 }), ended())).toEqual([]);
    expect(said(line(3, { cable: 101 }), ended())).toEqual([
      'caution: Run “A” has 303 m of cable, more than the 300 m that are usual on 24 AWG (common practice): P · 3. Shorten it or put a splitter into it',
    ]);
    expect(said(line(3, { cable: 101 }), ended({ reach: 500 }))).toEqual([]);
    const short = setCard('setup', 'rig', { reach: 100 });
    const open = line(3, { cable: 101 }).map((unit, at) => (at === 2 ? { ...unit, cable: null } : unit));
    expect(said(open, ended(), short)[0]).toMatch(
      /^caution: Run “A” has at least 202 m of cable, more than the 100 m that a run of this rig may have: P · 1, P · 2 and P · 3/,
    );
  });
});

describe('what a run carries', () => {
  const two: Units = [...line(1), { id: 'x', position: 'P', unit: '9', run: 'A', along: 9, address: 513 }];

  it('[RN6] units without a universe that all of them have are too many for it', () => {
    expect(said(two, ended())).toEqual([
      'caution: Run “A” has units of universes 1 and 2 and can carry one: P · 1 and P · 9. Put the others on a run of their own',
    ]);
  });

  it('[RN6] units that have no slots in what it carries are named, and a unit with a break in it is not', () => {
    const cable = ended({ from: 'cable 1' });
    expect(said(two, cable)).toEqual([
      'caution: Run “A” carries universe 1, and P · 9 listens to universe 2. Change address or run',
    ]);
    const bar: Edit = { kind: 'set-mode', type: 'Bar', mode: '2', footprints: [1, 1] };
    const both = [{ id: 'y', run: 'A', type: 'Bar', mode: '2', address: 600, address2: 7 }];
    expect(said(both, [bar], cable)).toEqual([]);
  });

  it('[RN6] a port out of which nothing comes is said', () => {
    const node = [...setCard('node', 'n', { name: 'Dock', ports: 2 }), ...setCard('port', 'n.1', { by: 'sacn' })];
    expect(said(line(1), node, ended({ from: 'port n.1' }))).toEqual([
      'caution: No universe comes out of node “Dock”, port 1, where run “A” begins. Say which one goes there',
    ]);
    expect(said([], node, ended({ from: 'port n.1' }))).toEqual([]);
  });
});

describe('the end of a run', () => {
  it('[RN7] not terminated is a caution, not said a note; without units there is none', () => {
    expect(said(line(2), describedRun('A', { end: 'open' }))).toEqual([
      'caution: Run “A” is not terminated at its end, P · 2. Put a terminator of 120 ohms there',
    ]);
    expect(said(line(2), describedRun('A'))).toEqual([
      'note: Nobody said whether run “A” is terminated at its end, P · 2',
    ]);
    expect(said([], describedRun('A'))).toEqual([]);
  });
});

describe('where runs begin', () => {
  it('[RN8] at what is gone, or at an output that is not there', () => {
    const node = setCard('node', 'n', { name: 'Dock', ports: 2 });
    const from = (source: string) => said([], node, split(), ended(), describedRun('B', { from: source }));
    expect(from('port n.2')).toEqual([]);
    expect(from('port n.3')[0]).toMatch(/begins at node “Dock”, port 3, which is not there/);
    expect(from('port m.1')[0]).toMatch(/begins at a node that is gone/);
    expect(from('splitter s.2')).toEqual([]);
    expect(from('splitter s.3')[0]).toMatch(/begins at splitter “Split”, output 3, which is not there/);
    expect(from('splitter t.1')[0]).toMatch(/begins at a splitter that is gone/);
  });

  it('[RN9] in a ring, and two at one output; the desk may send one universe twice', () => {
    expect(said([], ended({ from: 'splitter s.1' }), split())[0]).toMatch(/^caution: Run “A” begins behind itself/);
    const other = setCard('splitter', 't', { name: 'Other', run: 'B', outputs: 2 });
    const ring = said([], ended({ from: 'splitter t.1' }), split(), other, describedRun('B', { from: 'splitter s.1' }));
    expect(ring).toEqual([
      'caution: Runs “A”, “B” begin behind each other in a ring, so that no data comes in. Choose another beginning for one',
    ]);
    const twice = (from: string) =>
      said([], ended(), split(), describedRun('B', { from }), describedRun('C', { from }));
    expect(twice('splitter s.1')[0]).toMatch(
      /^caution: Runs “B” and “C” begin at one output, splitter “Split”, output 1/,
    );
    expect(twice('cable 1')).toEqual([]);
  });

  it('[RN9] a splitter on no run, or on one that nobody described', () => {
    expect(said([], ended(), split({ run: null }))[0]).toMatch(/Splitter “Split” is on no run/);
    expect(said([], ended(), split({ run: 'Z' }))[0]).toMatch(/is on run “Z”, which nobody has described/);
  });
});

describe('units on a run that nobody described', () => {
  it('[RN10] are a note, once anybody has described a run', () => {
    expect(said(line(2))).toEqual([]);
    expect(said(line(2, { run: ' Wings' }), ended())).toEqual([
      'note: Nobody has described run “Wings” of P · 1 and P · 2. Add it under Runs',
    ]);
  });
});
