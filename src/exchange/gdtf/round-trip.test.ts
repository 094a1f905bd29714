import { describe, expect, it } from 'vitest';
import { present } from '#base/assert.ts';
import { seededRng } from '#base/rng.ts';
import { GENERIC_TYPES } from '#engine/type/generic-types.ts';
import { unpack } from '#server/archive/unpack.ts';
import { randomType, usableType } from '#tests/support/random-type.ts';
import { exportGdtf, gdtfFileName } from './export-gdtf.ts';
import { importGdtf } from './import-gdtf.ts';

const read = (bytes: Uint8Array) => importGdtf(bytes, { unpack, nesting: 0 });

describe('a .gdtf file out and in again', () => {
  it('is the same type, whatever the type, and the file has no defect', async () => {
    for (let seed = 1; seed <= 300; seed++) {
      const type = usableType(seededRng(seed));
      const imported = await read(exportGdtf(type));
      if (!imported.ok) throw new Error(`seed ${seed}: ${JSON.stringify(imported.error)}`);
      expect(imported.value.type, `seed ${seed}`).toEqual(type);
      expect(imported.value.report.defects, `seed ${seed}`).toEqual([]);
      expect(imported.value.report.guesses, `seed ${seed}`).toEqual([]);
    }
  });

  it('is the same bytes for the same type', () => {
    expect(exportGdtf(randomType(seededRng(5)))).toEqual(exportGdtf(randomType(seededRng(5))));
  });

  it('keeps names that stand twice where the format has them once', async () => {
    const type = present(GENERIC_TYPES[0], 'no generic types');
    const [mode] = type.modes;
    const twice = { ...present(mode, 'no mode'), channels: [...(mode?.channels ?? []), ...(mode?.channels ?? [])] };
    const imported = await read(exportGdtf({ ...type, modes: [twice, ...type.modes.slice(1)] }));
    expect(imported.ok && imported.value.type).toEqual({ ...type, modes: [twice, ...type.modes.slice(1)] });
  });

  it('names the file after maker and model', () => {
    const type = present(GENERIC_TYPES[0], 'no generic types');
    expect(gdtfFileName({ ...type, maker: 'Ö/..', model: '' })).toBe('Ö___@Unnamed.gdtf');
  });
});
