import { describe, expect, it } from 'vitest';
import { SLOTS } from '#engine/model/address.ts';
import { attributeFacts, hazardsOfAttribute } from '#engine/type/attributes.ts';
import { footprintsOfMode, slotsOf } from '#engine/type/slots-of.ts';
import { typeTroubles } from '#engine/type/type-troubles.ts';
import { exportGdtf } from '#exchange/gdtf/export-gdtf.ts';
import { importGdtf } from '#exchange/gdtf/import-gdtf.ts';
import { unpack } from '#server/archive/unpack.ts';
import { DEMO_TYPES } from './demo-types.ts';

const TYPES = DEMO_TYPES.flatMap(({ id, revisions }) =>
  revisions.map(({ type }, at) => [`${id} ${at + 1}`, type] as const),
);

describe.each(TYPES)('the invented type %s', (_name, type) => {
  it('has no trouble, and says what every slot does by a name of the standard', () => {
    expect(typeTroubles(type)).toEqual([]);
    for (const mode of type.modes) {
      const uses = slotsOf(type, mode).breaks.flatMap(({ slots }) => slots.map((slot) => slot.uses));
      expect(uses.filter((each) => each.length !== 1)).toEqual([]);
      const unknown = uses.flat().filter(({ attribute }) => attributeFacts(attribute) === undefined);
      expect(unknown.map(({ attribute }) => attribute)).toEqual([]);
    }
  });

  it('names the hazards that its slots give away', () => {
    const functions = type.modes
      .flatMap((mode) => mode.channels.flatMap((channel) => channel.uses))
      .flatMap((use) => use.functions);
    const found = new Set(functions.flatMap((each) => hazardsOfAttribute(each.attribute)));
    expect([...found].filter((hazard) => !type.hazards[hazard])).toEqual([]);
  });

  it('is the same after a file out and in again', async () => {
    const imported = await importGdtf(exportGdtf(type), { unpack, nesting: 0 });
    if (!imported.ok) throw new Error(JSON.stringify(imported.error));
    expect(imported.value.type).toEqual(type);
    expect(imported.value.report.defects).toEqual([]);
    expect(imported.value.report.guesses).toEqual([]);
  });
});

describe('the footprints of the demo’s types', () => {
  it.each([
    ['demo-pilot 1', 'Short 12', [12]],
    ['demo-pilot 1', 'Full 24', [24]],
    ['demo-halyard 1', 'Standard', [22]],
    ['demo-halyard 1', 'Extended', [34]],
    ['demo-halyard 2', 'Standard', [24]],
    ['demo-halyard 2', 'Extended', [34]],
    ['demo-tideline 1', 'Four cells 20', [20]],
    ['demo-tideline 1', 'Twelve cells 52', [52]],
    ['demo-lodestone 1', 'Direct 5', [5]],
    ['demo-lodestone 1', 'Colour 9', [9]],
    ['demo-breakwater 1', 'Seven slots', [7]],
    ['demo-fogbank 1', 'Three slots', [3]],
    ['demo-fresnel 1', 'Dimmer', [1]],
    ['demo-scroller 1', 'Dimmer and scroller', [1, 1]],
  ] as const)('%s, %s', (name, modeName, footprints) => {
    const type = TYPES.find(([each]) => each === name)?.[1];
    const mode = type?.modes.find((each) => each.name === modeName);
    if (type === undefined || mode === undefined) throw new Error(`no ${name} ${modeName}`);
    expect(footprintsOfMode(type, mode)).toEqual(footprints);
    expect(Math.max(...footprints)).toBeLessThanOrEqual(SLOTS);
  });
});
