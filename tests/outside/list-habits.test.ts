import { describe, expect, it } from 'vitest';
import { type Rng, seededRng } from '#base/rng.ts';
import { rowsOf } from '#base/table.ts';
import { slotOf, universeOf } from '#engine/model/address.ts';
import { modeOf } from '#engine/model/find-mode.ts';
import type { Rig } from '#engine/model/rig.ts';
import { importBytes } from '#tests/support/import-bytes.ts';
import { type ListedUnit, writeList } from '#tests/support/write-list.ts';

describe('one rig, any list', () => {
  it('reads the same units whatever the habits of whoever wrote the list', () => {
    const rng = seededRng(61);
    for (let round = 0; round < 300; round++) {
      const units = randomUnits(rng);
      const { bytes, habits } = writeList(rng, units);
      const { rig, layout } = importBytes(bytes);
      const meanings = layout.columns.map((column) => `${column.heading}=${column.meaning}`).join(' ');
      expect({ round, habits, meanings, units: unitsOf(rig) }).toEqual({ round, habits, meanings, units });
    }
  });
});

const TYPES = ['Quillon spot', 'Ostrea wash', 'Hedera profile', 'Bracken batten', 'Lintel fresnel'];
const MODES = ['Basic', 'Extended', 'Short'];
const PLACES = ['Bridge 1', 'Bridge 2', 'LX 1', 'LX 12', 'Box boom left', 'Floor', 'Galerie links', 'Pont 2'];
const PURPOSES = ['Front, warm', 'Back light', 'Special', 'Cloth; top'];

/** Units of a plausible rig, with a fault here and there: overlaps, past the end, not patched, a channel twice. */
function randomUnits(rng: Rng): readonly ListedUnit[] {
  const units: ListedUnit[] = [];
  const slots = new Map<string, number>();
  let channel = 0;
  let next = 1 + rng.int(3) * 512;
  for (const position of PLACES.slice(0, 2 + rng.int(6))) {
    const type = rng.pick(TYPES);
    const mode = rng.pick(MODES);
    const footprint = slots.get(type + mode) ?? 1 + rng.int(40);
    slots.set(type + mode, footprint);
    channel = Math.ceil(channel / 10) * 10;
    for (let unit = 1; unit <= 3 + rng.int(10); unit++) {
      if (rng.int(40) > 0) channel += 1;
      if (((next - 1) % 512) + footprint > 512) next = Math.ceil((next - 1) / 512) * 512 + 1;
      const off = rng.int(60) === 0;
      const [universe, start] = [Math.floor((next - 1) / 512) + 1, ((next - 1) % 512) + 1];
      const purpose = rng.pick(PURPOSES);
      units.push({
        position,
        unit,
        channel,
        type,
        mode,
        slots: footprint,
        universe: off ? 0 : universe,
        start: off ? null : start,
        purpose,
      });
      next += rng.int(50) === 0 ? Math.ceil(footprint / 2) : footprint;
    }
  }
  return units;
}

function unitsOf(rig: Rig): readonly ListedUnit[] {
  const rows = [...rowsOf(rig.fixtures)].sort((a, b) => a.order - b.order);
  return rows.map((fixture) => {
    const [address = null] = fixture.addresses;
    return {
      position: fixture.position,
      unit: Number(fixture.unit),
      channel: fixture.channel ?? 0,
      type: fixture.type,
      mode: fixture.mode,
      slots: modeOf(rig, fixture)?.footprints[0] ?? 0,
      universe: address === null ? 0 : universeOf(address),
      start: address === null ? null : slotOf(address),
      purpose: fixture.purpose,
    };
  });
}
