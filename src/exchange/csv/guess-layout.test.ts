import { describe, expect, it } from 'vitest';
import { guessLayout, layoutWithHeading, withMeaning } from './guess-layout.ts';
import { mappingKey, readRemembered, rememberMapping } from './mapping-memory.ts';
import { readGrid } from './read-grid.ts';

function gridOf(text: string) {
  const grid = readGrid(text);
  if (!grid.ok) throw new Error(JSON.stringify(grid.error));
  return grid.value;
}

/** `Kanal=channel Kanäle=footprint` of a list whose headings are its first line. */
const guessed = (text: string) =>
  guessLayout(gridOf(text))
    .columns.map(({ heading, meaning }) => `${heading}=${meaning}`)
    .join(' ');

describe('guessLayout', () => {
  it.each([
    ['Kanal;Kanäle;DMX\n1;16;3.001\n2;16;3.018\n', 'Kanal=channel Kanäle=footprint DMX=address'],
    [
      'Channels,Type,DMX\n1,Spot,1\n2,Spot,17\n3,Spot,33\n4,Spot,49\n5,Spot,65\n6,Spot,81\n',
      'Channels=channel Type=type DMX=address',
    ],
    ['Channel,Channels,DMX\n1,16,1/1\n2,16,1/17\n', 'Channel=channel Channels=footprint DMX=address'],
    ['No.,Ch,Type,Dimmer\n1,5,Fresnel,12\n2,6,Fresnel,13\n', 'No.=unit Ch=channel Type=type Dimmer=address'],
    ['Unit,Ch,Dimmer,Patch\n1,5,D12,1/44\n2,6,D13,1/45\n', 'Unit=unit Ch=channel Dimmer=circuit Patch=address'],
    ['Unit,Ch,Universe,Patch\n1,5,2,44\n2,6,2,45\n', 'Unit=unit Ch=channel Universe=universe Patch=slot'],
    [
      'Unit,Ch,U,DMX Channel\n1,5,2,44\n2,6,2,45\n3,7,2,46\n4,8,2,47\n5,9,2,48\n',
      'Unit=unit Ch=channel U=universe DMX Channel=slot',
    ],
    [
      'Nr;Gerät;Leistung (kW);Adresse\n1;Spot;0,62;3,001\n2;Spot;1,50;3,018\n',
      'Nr=unit Gerät=type Leistung (kW)=ignore Adresse=address',
    ],
    [
      'Pos;Unit;Make;Model;Weight kg\nLX1;1;Fir;Spot;22\nLX1;2;Fir;Spot;22\n',
      'Pos=position Unit=unit Make=type Model=type Weight kg=ignore',
    ],
    [
      'Perche;Circuit;Projecteur;Gradateur\nP1;11;PC;3\nP1;12;PC;4\n',
      'Perche=position Circuit=channel Projecteur=type Gradateur=address',
    ],
    ['Channel,Circuit,Type\n1,C4,PC\n2,C5,PC\n', 'Channel=channel Circuit=circuit Type=type'],
    [
      'Fixture,Type,Position,DMX\n101,Spot,LX1,1/1\n102,Spot,LX1,1/17\n',
      'Fixture=channel Type=type Position=position DMX=address',
    ],
    [
      'Unit,Type,Anzahl,Notes,Remarks\n1,Spot,4,a,b\n5,Spot,4,a,b\n',
      'Unit=unit Type=type Anzahl=quantity Notes=notes Remarks=notes',
    ],
    [
      'Pozice,Kus,Svítidlo,Adr\nMost,1,Reflektor A,1/1\nMost,2,Reflektor A,1/17\nRampa,1,Reflektor A,1/33\nRampa,2,Reflektor A,1/49\n',
      'Pozice=position Kus=unit Svítidlo=type Adr=address',
    ],
  ])('reads %j', (text, meanings) => {
    expect(guessed(text)).toBe(meanings);
  });

  it('finds the headings below titles, and none where there are none', () => {
    expect(guessLayout(gridOf('My rig;;\nversion 2;;\n;;\nUnit;Type;DMX\n1;Spot;1/1\n')).headingRow).toBe(3);
    expect(guessLayout(gridOf('LX 1,1,Spot,1/1\nLX 1,2,Spot,1/17\n')).headingRow).toBeNull();
  });

  it('lets the person point out the headings and set a meaning', () => {
    const grid = gridOf('Type,Unit\nAlpha,Beta\nSpot,1\n');
    expect(layoutWithHeading(grid, 1).columns.map((column) => column.heading)).toEqual(['Alpha', 'Beta']);
    const layout = withMeaning(guessLayout(grid), 1, 'channel');
    expect(layout.columns[1]).toEqual({ heading: 'Unit', meaning: 'channel', because: 'person' });
  });

  it('remembers what the person said for lists with the same headings, and for no other', () => {
    const grid = gridOf('Wert A;Wert B;DMX\n1;Spot;1/1\n');
    const settled = withMeaning(withMeaning(guessLayout(grid), 0, 'unit'), 1, 'type');
    const kept = readRemembered(JSON.parse(JSON.stringify(rememberMapping({ ...settled, blankPosition: 'as-above' }))));
    const next = guessLayout(gridOf('new\n\nWERT A;wert b;dmx\n7;Wash;1/9\n'), kept);
    expect(next.columns.map((column) => [column.meaning, column.because])).toEqual([
      ['unit', 'remembered'],
      ['type', 'remembered'],
      ['address', 'remembered'],
    ]);
    expect(next.blankPosition).toBe('as-above');
    const other = guessLayout(gridOf('Wert A;Wert C;DMX\n1;Spot;1/1\n'), kept);
    expect(other.columns.some((column) => column.because === 'remembered')).toBe(false);
    expect(mappingKey(other)).not.toBe(kept?.key);
  });

  it.each([
    [null],
    ['x'],
    [{ key: 'k' }],
    [{ key: 'k', meanings: ['nonsense'], blankPosition: 'blank' }],
    [{ key: 1, meanings: [], blankPosition: 'blank' }],
  ])('does not take %j for a mapping', (value) => {
    expect(readRemembered(value)).toBeUndefined();
  });
});
