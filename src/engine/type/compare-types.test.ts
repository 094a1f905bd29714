import { describe, expect, it } from 'vitest';
import { present } from '#base/assert.ts';
import { type Rng, seededRng } from '#base/rng.ts';
import { randomType } from '#tests/support/random-type.ts';
import type { ChannelUse, FixtureType, TypeChannel, TypeMode } from '../model/fixture-type.ts';
import { compareTypes, saysTheSame } from './compare-types.ts';
import { canonicalText } from './content-hash.ts';
import { GENERIC_TYPES } from './generic-types.ts';
import { slotsOf } from './slots-of.ts';

describe('compareTypes', () => {
  it('[FT12] finds nothing exactly when both say the same', () => {
    const seen = { same: 0, differ: 0, unseen: 0 };
    for (let seed = 1; seed <= 400; seed++) {
      const rng = seededRng(seed);
      const before = randomType(rng);
      const after = rng.pick([reordered, changedSomewhere])(rng, before);
      const comparison = compareTypes(before, after);
      const same = canonicalText(before) === canonicalText(after);
      expect(saysTheSame(comparison), `seed ${seed}`).toBe(same);
      seen[same ? 'same' : comparison.unseen ? 'unseen' : 'differ'] += 1;
    }
    expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(5);
  });

  it('[FT12] names every slot of a channel that changed, and no other', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const rng = seededRng(seed);
      const before = randomType(rng);
      const mode = rng.pick(before.modes);
      const channel = rng.pick(mode.channels);
      const uses = channel.uses.map((use, at) => (at === 0 ? { ...use, attribute: `${use.attribute} now` } : use));
      const after = withMode(before, mode, withChannel(mode, channel, { ...channel, uses, initial: null }));
      const own = slotsOf(before, mode).breaks.flatMap((each) =>
        each.slots
          .filter((slot) => slot.uses.some((use) => use.channel === channel))
          .map((slot) => `${each.break}:${slot.slot}`),
      );
      const named = compareTypes(before, after).changed.flatMap((each) =>
        each.slots.map((slot) => `${slot.break}:${slot.slot}`),
      );
      expect(named, `seed ${seed}`).toEqual(own);
    }
  });

  it('[FT12] is the same backwards, with the sides changed', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const rng = seededRng(seed);
      const [a, b] = [randomType(rng), randomType(rng)];
      const there = compareTypes(a, b);
      const back = compareTypes(b, a);
      expect(back.added).toEqual(there.removed);
      expect(back.facts.map(({ fact, before, after }) => ({ fact, before: after, after: before }))).toEqual(
        there.facts,
      );
      expect(back.unseen).toBe(there.unseen);
    }
  });

  it('[FT12] says what was there, and what is there now', () => {
    const type = present(GENERIC_TYPES[2], 'no RGB');
    const mode = present(type.modes[0], 'no mode');
    const white = { ...present(mode.channels[0], 'no channel'), offsets: [5] };
    const named = { ...white, uses: [{ ...present(white.uses[0], 'no use'), attribute: 'ColorAdd_W' }] };
    const longer = { ...mode, channels: [...mode.channels, named] };
    const after = { ...withMode(type, mode, longer), physical: { ...type.physical, weight: 3.5 } };
    const { facts, changed } = compareTypes(type, after);
    expect(facts).toEqual([{ fact: 'weight', before: '', after: '3.5' }]);
    expect(
      changed.map(({ slots }) => slots.map(({ slot, before, after: now }) => [slot, said(before), said(now)])),
    ).toEqual([
      [
        [4, 'none', 'hole'],
        [5, 'none', 'ColorAdd_W'],
      ],
    ]);
  });
});

const said = (uses: readonly { readonly attribute: string }[] | null) =>
  uses === null ? 'none' : uses.map((use) => use.attribute).join(' and ') || 'hole';

const reordered = (_: Rng, type: FixtureType): FixtureType => ({
  ...type,
  parts: [...type.parts].reverse(),
  modes: [...type.modes].reverse().map((mode) => ({ ...mode, channels: [...mode.channels].reverse() })),
});

/** One thing changed, seen in a chart or not; now and then to what it was. */
function changedSomewhere(rng: Rng, type: FixtureType): FixtureType {
  const mode = rng.pick(type.modes);
  const channel = rng.pick(mode.channels);
  const channelNow = (change: Partial<TypeChannel>) =>
    withMode(type, mode, withChannel(mode, channel, { ...channel, ...change }));
  const firstUse = (change: Partial<ChannelUse>) =>
    channelNow({ uses: channel.uses.map((use, at) => (at === 0 ? { ...use, ...change } : use)) });
  return rng.pick([
    () => ({ ...type, model: rng.pick([type.model, 'Other']) }),
    () => ({ ...type, guid: '' }),
    () => ({ ...type, parts: type.parts.map((part) => ({ ...part, kind: 'beam' as const })) }),
    () => ({ ...type, hazards: { ...type.hazards, fog: true } }),
    () => ({ ...type, settings: { ...type.settings, switches: 'A' as const } }),
    () => ({ ...type, modes: type.modes.slice(1) }),
    () => withMode(type, mode, { ...mode, name: `${mode.name} too` }),
    () => withMode(type, mode, { ...mode, firmware: ['1.0'] }),
    () => channelNow({ offsets: channel.offsets.map((offset) => offset + 1) }),
    () => channelNow({ highlight: 3 }),
    () => firstUse({ snap: 'Yes' }),
    () => firstUse({ functions: [] }),
  ])();
}

const withMode = (type: FixtureType, old: TypeMode, mode: TypeMode): FixtureType => ({
  ...type,
  modes: type.modes.map((each) => (each === old ? mode : each)),
});

const withChannel = (mode: TypeMode, old: TypeChannel, channel: TypeChannel): TypeMode => ({
  ...mode,
  channels: mode.channels.map((each) => (each === old ? channel : each)),
});
