import { describe, expect, it } from 'vitest';
import { getRow } from '#base/table.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { setCard } from '#engine/model/card-edits.ts';
import { unitPath } from '#engine/network/runs/unit-path.ts';
import { describedRun, lineRig } from '#tests/support/line-rig.ts';
import { ordinal, pathLines } from './unit-path.ts';

const RIG = applyEdits(
  lineRig([
    { id: 'u', run: 'Truss', along: 2, cable: 4, address: 513 },
    { id: 'v', run: 'Truss', along: 1, address: 1 },
    { id: 'w', run: 'Wings' },
    { id: 'x' },
  ]),
  [
    ...setCard('node', 'n', { name: 'Dock', ports: 4 }),
    ...setCard('port', 'n.2', { by: 'sacn', number: 12 }),
    ...setCard('delivery', '2', { by: 'sacn', sacn: 12, portAddress: 1 }),
    ...describedRun('Feed', { from: 'port n.2', lead: 30 }),
    ...describedRun('Truss', { from: 'splitter s.3', lead: 20 }),
    ...setCard('splitter', 's', { name: 'Split', run: 'Feed', outputs: 8 }),
  ],
);

function pathOf(id: string): string[] {
  const fixture = getRow(RIG.fixtures, id);
  return fixture === undefined ? [] : pathLines(unitPath(RIG, fixture)).map(({ name, text }) => `${name}: ${text}`);
}

describe('the way to a unit in words', () => {
  it('[RN11] names universe, numbers, run, place, metres, splitter and port', () => {
    expect(pathOf('u')).toEqual([
      'Universe 2: sACN 12 · Port-Address 0:0:1 (0x0001)',
      'Run Truss: 2nd of 2, 24 m; from splitter “Split”, output 3',
      'Run Feed: the splitter is 1st of 1, 30 m; from node “Dock”, port 2, which listens to sACN 12',
    ]);
  });

  it('[RN11] says what nobody said, and nothing where there is nothing', () => {
    expect(pathOf('v')[0]).toBe('Universe 1: nobody said how it travels');
    expect(pathOf('w')).toEqual(['Run Wings: 1st of 1, length not known; nobody has described this run']);
    expect(pathOf('x')).toEqual([]);
  });

  it('counts as people do', () => {
    expect([1, 2, 3, 4, 11, 12, 13, 21, 22, 103, 111].map(ordinal)).toEqual([
      '1st',
      '2nd',
      '3rd',
      '4th',
      '11th',
      '12th',
      '13th',
      '21st',
      '22nd',
      '103rd',
      '111th',
    ]);
  });
});
