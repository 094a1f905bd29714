import { describe, expect, it } from 'vitest';
import type { FixtureType } from '#engine/model/fixture-type.ts';
import { atResolution } from '#engine/type/dmx-value.ts';
import { footprintsOfMode, slotsOf } from '#engine/type/slots-of.ts';
import { asResolution, parseDmxValue } from '#exchange/gdtf/dmx-value-text.ts';
import { importGdtf } from '#exchange/gdtf/import-gdtf.ts';
import { unpack } from '#server/archive/unpack.ts';
import { gdtfChannel, gdtfDescription, gdtfFile } from '#tests/support/gdtf-file.ts';
import values from './check-values.json' with { type: 'json' };

// Values and where they are from: check-values.json. Mark R: read in the GDTF text or the unit-test values of the
// specification owners' reference library; C: computed from a rule read there.
const rows = (group: string) => Object.entries(values).filter(([, row]) => row.group === group);

describe('DMX values against GDTF (DIN SPEC 15800)', () => {
  it.each(rows('gdtf-value'))('[FT8] value %s: at 8, 16, 24 and 32 bit', (_n, { input, expected }) => {
    const parsed = parseDmxValue(input.replace(/^DMXValue (\S+) .*/, '$1'));
    if (parsed === null) throw new Error(`cannot read ${input}`);
    const value = { ...parsed, bytes: asResolution(parsed.bytes ?? 0) };
    const widths = ([1, 2, 3, 4] as const).map((bytes) => atResolution(value, bytes));
    expect(widths.join(' / ')).toBe(expected);
  });
});

// What each row describes, as a file: its geometries and the channels of its one mode.
const FILES: Readonly<Record<string, { readonly geometries: string; readonly channels: string }>> = {
  '107': {
    geometries: `<Geometry Name="Bar">${references([1, 8, 15, 22])}</Geometry><Geometry Name="Head"/>`,
    channels: [3, 4, 5, 6, 7, 8, 9].map((at) => gdtfChannel('Head', `A${at}`, `${at}`)).join('') + body(1, 2),
  },
  '108': {
    geometries: `<Geometry Name="Bar">${references([1, 4, 7, 10, 13, 16, 19, 22, 25])}</Geometry><Geometry Name="Head"/>`,
    channels: [1, 2, 3].map((at) => gdtfChannel('Head', `A${at}`, `${at}`, 'DMXBreak="Overwrite"')).join(''),
  },
  '109': {
    geometries: '<Geometry Name="Bar"/>',
    channels: [1, 2, 3, 4]
      .map((at) => gdtfChannel('Bar', `D${at}`, `${at}`) + gdtfChannel('Bar', `S${at}`, `${at}`, 'DMXBreak="2"'))
      .join(''),
  },
  '112': {
    geometries: '<Geometry Name="Bar"/>',
    channels: gdtfChannel('Bar', 'Pan', '1,2') + body(3) + gdtfChannel('Bar', 'Control1', 'None'),
  },
  '114': { geometries: '<Geometry Name="Bar"/>', channels: body(1) + gdtfChannel('Bar', 'Pan', '5,6') },
};

const ONLY_VIRTUAL = gdtfChannel('Bar', 'Dimmer', 'None');

describe('footprints against GDTF (DIN SPEC 15800)', () => {
  it.each(rows('gdtf-footprint').filter(([n]) => n !== '113'))('[FT2] value %s: %j', async (n, { expected }) => {
    const file = FILES[n];
    if (file === undefined) throw new Error(`no file for value ${n}`);
    const type = await read(file.geometries, modeOf(file.channels));
    expect(spell(type, expected)).toBe(expected);
  });

  it('[FT2] value 113: only virtual channels', async () => {
    const { input, expected } = values['113'];
    expect(input).toBe('only virtual channels');
    const usable = modeOf(body(1)).replace('Name="M"', 'Name="Usable"');
    const type = await read('<Geometry Name="Bar"/>', modeOf(ONLY_VIRTUAL) + usable);
    expect(`${footprints(type)[0] ?? 0} slots`).toBe(expected);
    const alone = await importGdtf(gdtfFile(gdtfDescription('<Geometry Name="Bar"/>', modeOf(ONLY_VIRTUAL))), how);
    expect(alone).toMatchObject({
      ok: false,
      error: { code: 'no-usable-mode', modes: 1, trouble: { kind: 'only-virtual' } },
    });
  });

  it('has a row of each kind', () => {
    expect([rows('gdtf-value').length, rows('gdtf-footprint').length]).toEqual([6, 6]);
  });
});

const how = { unpack, nesting: 0 };

async function read(geometries: string, modes: string): Promise<FixtureType> {
  const imported = await importGdtf(gdtfFile(gdtfDescription(geometries, modes)), how);
  if (!imported.ok) throw new Error(JSON.stringify(imported.error));
  expect(imported.value.report.defects).toEqual([]);
  return imported.value.type;
}

function firstMode(type: FixtureType) {
  const [mode] = type.modes;
  if (mode === undefined) throw new Error('no mode');
  return mode;
}

const footprints = (type: FixtureType) => footprintsOfMode(type, firstMode(type));

/** What the slot map says, in the form of the expected value. */
function spell(type: FixtureType, expected: string): string {
  const { breaks, virtual } = slotsOf(type, firstMode(type));
  if (expected.startsWith('break'))
    return footprints(type)
      .map((slots, at) => `break ${at + 1}: ${slots}`)
      .join('; ');
  const holes = breaks.flatMap((each) => each.slots.filter((slot) => slot.uses.length === 0).map((slot) => slot.slot));
  const last = virtual > 0 ? `, ${virtual} virtual channel` : '';
  const owned = holes.length > 0 ? `, holes ${holes[0]}-${holes.at(-1)} owned` : '';
  return `${footprints(type)[0]} slots${last}${owned}`;
}

function modeOf(channels: string): string {
  return `<DMXMode Name="M" Geometry="Bar"><DMXChannels>${channels}</DMXChannels></DMXMode>`;
}

function body(...offsets: readonly number[]): string {
  return offsets.map((at) => gdtfChannel('Bar', `Body${at}`, `${at}`)).join('');
}

function references(offsets: readonly number[]): string {
  return offsets
    .map((at) => `<GeometryReference Name="Head ${at}" Geometry="Head"><Break DMXOffset="${at}"/></GeometryReference>`)
    .join('');
}
