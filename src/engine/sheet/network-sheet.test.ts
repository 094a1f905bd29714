import { describe, expect, it } from 'vitest';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import { standingOf } from '#words/sheets.ts';
import { checkRig } from '../check/check-rig.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { setCard } from '../model/card-edits.ts';
import { makeSheet } from './make-sheet.ts';

const RIG = applyEdits(rigOf('1:1 Spot/16 x2\n2:1 Spot/20\n3:1 Dim/1\n4:1 Dim/1'), [
  { kind: 'set-universe', universe: 1 as never, label: 'Front' },
  ...setCard('delivery', '1', { by: 'sacn', sacn: 257, portAddress: 0 }),
  ...setCard('delivery', '2', { by: 'art-net', sacn: 2, portAddress: 255 }),
  ...setCard('delivery', '3', { by: 'cable' }),
  ...setCard('delivery', '8', { by: 'sacn', sacn: 8 }),
  ...setCard('node', 'n', { name: 'Beam', address: '2.0.0.1', ports: 4 }),
  ...setCard('node', 'm', { name: 'Truss', address: '2.0.0.2', ports: 4 }),
  ...setCard('port', 'n.2', { by: 'sacn', number: 257 }),
  ...setCard('port', 'm.1', { by: 'sacn', number: 257 }),
  ...setCard('run', 'a', { name: 'A', from: 'port n.2' }),
  ...setCard('run', 'c', { name: 'C', from: 'cable 3' }),
]);

describe('network sheet', () => {
  // Groups and Port-Addresses: check values 60 and 42 (ANSI E1.31; Art-Net 4).
  it('[NW34] one row for each universe in use, its three numbers side by side', () => {
    const sheet = makeSheet('network', RIG, standingOf(RIG, checkRig(RIG)));
    const rows = [...sheet.rows].map((row) =>
      row
        .slice(0, -1)
        .map((cell) => (cell === null || cell === '' ? '-' : cell))
        .join(' | '),
    );
    expect(sheet.length).toBe(4);
    expect(rows).toEqual([
      '1 | Front | sACN | 257 | 239.255.1.1 | 0:0:0 (0x0000) | Beam; Truss | 2.0.0.1; 2.0.0.2 | 2; 1 | A | 2 | 32',
      '2 | - | Art-Net | 2 | 239.255.0.2 | 0:15:15 (0x00FF) | - | - | - | - | 1 | 20',
      '3 | - | cable | - | - | - | - | - | - | C | 1 | 1',
      '4 | - | - | - | - | - | - | - | - | - | 1 | 1',
    ]);
  });

  it('[NW34] says of each universe what the rules of the network found, and at its foot whatever stands', () => {
    const findings = checkRig(RIG);
    const sheet = makeSheet('network', RIG, standingOf(RIG, findings));
    const said = [...sheet.rows].map((row) => String(row.at(-1)));
    expect(said[0]).toBe('');
    expect(said[1]).toMatch(/^Universe 2 travels as Art-Net 0:15:15 \(0x00FF\), and no port listens/);
    expect(said[3]).toMatch(/^Universe 4 is in use, and nobody has said how it travels/);
    expect(sheet.foot).toHaveLength(findings.length);
  });
});
