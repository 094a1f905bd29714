import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { footprintsOfMode } from '#engine/type/slots-of.ts';
import { unpack } from '#server/archive/unpack.ts';
import { gdtfChannel, gdtfDescription, gdtfFile } from '#tests/support/gdtf-file.ts';
import { defectSentence, guessSentence, LEFT_WORDS } from '#words/gdtf.ts';
import { importGdtf } from './import-gdtf.ts';

const BODY = '<Geometry Name="B"/>';
const mode = (channels: string, rest = 'Name="M" Geometry="B"') =>
  `<DMXMode ${rest}><DMXChannels>${channels}</DMXChannels></DMXMode>`;
const DIMMER = gdtfChannel('B', 'Dimmer', '1');

async function read(file: Uint8Array) {
  const imported = await importGdtf(file, { unpack, nesting: 0 });
  if (!imported.ok) throw new Error(JSON.stringify(imported.error));
  const { type, report } = imported.value;
  const [first] = type.modes;
  const channel = first?.channels[0];
  const footprints = type.modes.map((each) => footprintsOfMode(type, each).join('+'));
  for (const defect of report.defects) expect(defectSentence(defect)).toMatch(/^Line \d+: .+\.$/);
  for (const guess of report.guesses) expect(guessSentence(guess)).toMatch(/\.$/);
  return { type, report, channel, footprints, defects: report.defects.map((defect) => defect.code) };
}

describe('lenient reading', () => {
  it.each(['0.88', '1.0', '1.1', '1.2'])('takes version %s', async (version) => {
    const { report, defects } = await read(gdtfFile(gdtfDescription(BODY, mode(DIMMER), version)));
    expect([report.version, defects]).toEqual([version, []]);
  });

  it('takes bytes, defaults and values as versions before 1.1 spell them (from memory)', async () => {
    const old = `<DMXChannel Geometry="B" Coarse="1" Fine="4" Default="32896/2"><LogicalChannel Attribute="Shutter1">
      <ChannelFunction Name="Closed" Attribute="Shutter1" DMXFrom="0/2"/>
      <ChannelFunction Name="Open" Attribute="Shutter1" DMXFrom="100/1"><ChannelSet Name="x" DMXFrom="51400"/></ChannelFunction>
      </LogicalChannel></DMXChannel>`;
    const { report, channel, footprints, defects } = await read(gdtfFile(gdtfDescription(BODY, mode(old), '0.88')));
    expect([footprints, defects]).toEqual([['4'], []]);
    expect(report.guesses.map((guess) => guess.kind)).toEqual(['old-offsets', 'old-defaults']);
    expect(channel?.initial).toEqual({ attribute: 'Shutter1', name: 'Open' });
    expect(channel?.uses[0]?.functions.map((each) => [each.from, each.default, each.ranges[0]?.from])).toEqual([
      [0, 0, undefined],
      [25700, 32896, 51400],
    ]);
  });

  it('reads values of other lengths than their channel, mirrored and shifted', async () => {
    const channel = `<DMXChannel Geometry="B" Offset="1,2" Highlight="255/1s"><LogicalChannel Attribute="Pan"><ChannelFunction Attribute="Pan" DMXFrom="0/1" Default="128/1"/></LogicalChannel></DMXChannel>`;
    const { channel: pan } = await read(gdtfFile(gdtfDescription(BODY, mode(channel))));
    expect([pan?.highlight, pan?.uses[0]?.functions[0]?.default]).toEqual([65280, 32896]);
  });

  it('reads slots of parts that stand twice, of the one that the mode reaches', async () => {
    const trees = '<Geometry Name="A"><Axis Name="Head"/></Geometry><Geometry Name="B"><Axis Name="Head"/></Geometry>';
    const modes = ['A', 'B'].map((root) =>
      mode(gdtfChannel('Head', 'Pan', '1,2') + gdtfChannel(root, 'Dimmer', '3'), `Name="${root}" Geometry="${root}"`),
    );
    const { footprints, defects } = await read(gdtfFile(gdtfDescription(trees, modes.join(''))));
    expect([footprints, defects]).toEqual([['3', '3'], ['part-named-twice']]);
  });

  it('reads cells and modes that start from a part within another', async () => {
    const geometries = `<Geometry Name="B"><Geometry Name="Cell"/>
      <GeometryReference Name="R" Geometry="Cell"><Break DMXBreak="1" DMXOffset="4"/></GeometryReference></Geometry>`;
    const channels = gdtfChannel('Cell', 'ColorAdd_R', '1', 'DMXBreak="1"') + gdtfChannel('Cell', 'ColorAdd_G', '2');
    const modes = mode(channels) + mode(gdtfChannel('Cell', 'Dimmer', '1,2'), 'Name="N" Geometry="Cell"');
    const { footprints, defects } = await read(gdtfFile(gdtfDescription(geometries, modes)));
    expect([footprints, defects]).toEqual([['5', '2'], ['part-within']]);
  });

  it('reports each defect by name and reads on', async () => {
    const bad: readonly [string, string][] = [
      ['version', gdtfDescription(BODY, mode(DIMMER), '9.9')],
      ['guid', gdtfDescription(BODY, mode(DIMMER)).replace('1F3B5C7D', 'zzz')],
      ['no-name', gdtfDescription(BODY, mode(DIMMER)).replace(' Name="Sample"', '')],
      ['part-unnamed', gdtfDescription(`${BODY}<Geometry/>`, mode(DIMMER))],
      ['part-named-twice', gdtfDescription(BODY + BODY, mode(DIMMER))],
      ['mode-named-twice', gdtfDescription(BODY, mode(DIMMER) + mode(DIMMER))],
      ['mode-root', gdtfDescription(BODY, mode(DIMMER, 'Name="M" Geometry="Lost"'))],
      ['copy-of-nothing', gdtfDescription(`${BODY}<GeometryReference Name="R" Geometry="Lost"/>`, mode(DIMMER))],
      ['channel-part', gdtfDescription(BODY, mode(DIMMER + gdtfChannel('Lost', 'Pan', '2')))],
      ['channel-empty', gdtfDescription(BODY, mode(`${DIMMER}<DMXChannel Geometry="B" Offset="None"/>`))],
      ['offset', gdtfDescription(BODY, mode(DIMMER + gdtfChannel('B', 'Pan', 'x')))],
      ['break', gdtfDescription(BODY, mode(gdtfChannel('B', 'Dimmer', '1', 'DMXBreak="-3"')))],
      ['value', gdtfDescription(BODY, mode(gdtfChannel('B', 'Dimmer', '1', 'Highlight="full"')))],
      ['value-too-high', gdtfDescription(BODY, mode(gdtfChannel('B', 'Dimmer', '1', 'Highlight="256/1"')))],
      ['link', gdtfDescription(BODY, mode(gdtfChannel('B', 'Dimmer', '1', 'InitialFunction="Nowhere"')))],
      ['number', gdtfDescription(BODY, mode(DIMMER.replace('DMXFrom', 'PhysicalFrom="wide" DMXFrom')))],
    ];
    for (const [code, description] of bad) {
      const { defects, footprints } = await read(gdtfFile(description));
      expect([code, defects]).toEqual([code, [code]]);
      expect(footprints[0], code).toBe('1');
    }
  });

  it('takes a description in a folder, and in other encodings', async () => {
    const description = gdtfDescription(BODY, mode(DIMMER)).replace('Corvid', 'Müller');
    const utf8 = new TextEncoder().encode(description);
    const wide = Buffer.from(`\ufeff${description}`, 'utf16le');
    const narrow = Buffer.from(description, 'latin1');
    const padded = Buffer.from(`\ufeff\r\n ${description}\0\0`);
    const read4 = [
      await read(zipSync({ 'Sample/description.xml': utf8, 'Sample/thumb.png': utf8 })),
      await read(zipSync({ 'description.xml': wide })),
      await read(zipSync({ 'description.xml': narrow })),
      await read(zipSync({ 'description.xml': padded })),
    ];
    expect(read4.map((each) => each.defects)).toEqual([['not-at-root'], ['encoding'], ['encoding'], []]);
    expect(new Set(read4.map((each) => each.type.maker))).toEqual(new Set(['Müller Stage']));
    expect(read4[0]?.report.left).toEqual([{ what: 'files', count: 1 }]);
  });

  it('passes over notes of ours that are not as we write them', async () => {
    const description = new TextEncoder().encode(gdtfDescription(BODY, mode(DIMMER)));
    const { defects } = await read(zipSync({ 'description.xml': description, 'rigledger.json': description }));
    expect(defects).toEqual(['notes-file']);
  });

  it('keeps attributes nobody knows as text, and guesses hazards from those it knows', async () => {
    const channels =
      gdtfChannel('B', 'Wobble(3)', '1') + gdtfChannel('B', 'Pan', '2,3') + gdtfChannel('B', 'Fog1', '4');
    const laser = '<Geometry Name="B"><Laser Name="L"/></Geometry>';
    const { type, channel, report } = await read(gdtfFile(gdtfDescription(laser, mode(channels))));
    expect(channel?.uses[0]?.attribute).toBe('Wobble(3)');
    expect(type.hazards).toEqual({
      laser: 'unknown',
      strobe: false,
      ultraviolet: false,
      movingParts: true,
      fog: true,
      heat: false,
    });
    expect(report.guesses.map((guess) => guess.kind)).toEqual(['laser', 'hazard', 'hazard']);
  });

  it('states weight and power as the file does, and never a default of the format', async () => {
    const physical = (properties: string, geometries = BODY) =>
      read(
        gdtfFile(
          gdtfDescription(geometries, mode(DIMMER)).replace(
            '<AttributeDefinitions/>',
            `<PhysicalDescriptions><Connectors><Connector Name="In" Type="16A-CEE"/></Connectors><Properties>${properties}</Properties></PhysicalDescriptions>`,
          ),
        ),
      );
    const stated = await physical(
      '<Weight Value="7,5"/><PowerConsumption Value="480" PowerFactor="0.9" Connector="In" VoltageLow="100" VoltageHigh="240"/>',
    );
    expect(stated.type.physical).toEqual({
      weight: 7.5,
      power: 480,
      powerFactor: 0.9,
      voltage: { low: 100, high: 240 },
      connector: '16A-CEE',
      perBreaker: [],
    });
    const beam = '<Geometry Name="B"><Beam Name="L" PowerConsumption="1000"/></Geometry>';
    const silent = await physical('<Weight Value="0"/>', beam);
    expect([silent.type.physical.weight, silent.type.physical.power]).toEqual([null, null]);
    expect(silent.report.guesses).toEqual([{ kind: 'not-stated', figure: 'weight' }]);
    const wired =
      '<Geometry Name="B"><WiringObject Name="W" ComponentType="Consumer" ElectricalPayLoad="90"/></Geometry>';
    const guessed = await physical('', wired);
    expect([guessed.type.physical.power, guessed.report.guesses[0]?.kind]).toEqual([90, 'power']);
    expect(guessed.report.left.map(({ what }) => LEFT_WORDS[what])).toEqual(['wiring']);
  });
});
