import { describe, expect, it } from 'vitest';
import { claimsOf } from '#engine/address/claim.ts';
import { formatAddress, parseAddress } from '#engine/address/notation.ts';
import { absolute, isAbsolute } from '#engine/model/address.ts';
import { fixtureId, modeId } from '#engine/model/ids.ts';
import { compareNatural } from '#engine/model/natural-order.ts';
import { readFixture } from '#engine/model/read-fixture.ts';
import values from './check-values.json' with { type: 'json' };

// Values and where they are from: check-values.json. Mark R: read in the source named (GDTF and MVR texts, or the unit-test
// values of the specification owners' reference library); C: computed from a rule read there; M: from memory, common practice.
const rows = (group: string) => Object.entries(values).filter(([, row]) => row.group === group);

describe('addresses against the GDTF and MVR texts (DIN SPEC 15800, 15801)', () => {
  it.each(rows('abs'))('[AD1] value %s: universe and slot to absolute', (_n, { input, expected }) => {
    const [, universe, slot] = /U\.A (\d+)\.(\d+)/.exec(input) ?? [];
    expect(absolute(Number(universe), Number(slot))).toBe(Number(expected));
    expect(parseAddress(input.replace('U.A ', ''))).toEqual({ ok: true, value: Number(expected) });
  });

  it.each(rows('abs-inv'))('[AD1] value %s: absolute to universe and slot', (_n, { input, expected }) => {
    const address = Number(/absolute (\d+)/.exec(input)?.[1]);
    expect(isAbsolute(address) ? formatAddress(address) : '').toBe(expected.replace('.', ':'));
  });

  it.each(rows('fit'))('[OC2] value %s: what fits from an address on', (_n, { input, expected }) => {
    const [, address, footprint] = /address (\d+), footprint (\d+)/.exec(input) ?? [];
    const fixture = readFixture(fixtureId('f1'), { address: Number(address) });
    const mode = { id: modeId('T', 'M'), type: 'T', mode: 'M', footprints: [Number(footprint)], pin: null };
    const [claim] = claimsOf(fixture, mode);
    const said = claim?.over === 0 ? `fits (ends ${claim.last})` : `overflow by ${claim?.over}`;
    expect(said).toBe(expected);
  });

  it.each(rows('sort'))(
    '[AD3] value %s: units in natural order (from memory, common practice)',
    (_n, { input, expected }) => {
      const units = input.replace('units ', '').split(', ');
      expect(units.sort(compareNatural).join(', ')).toBe(expected);
    },
  );

  it('has rows of each group', () => {
    expect(['abs', 'abs-inv', 'fit', 'sort'].map((group) => rows(group).length)).toEqual([7, 5, 5, 1]);
  });
});
