import type { ChannelUse, FixtureType, FunctionName, TypeChannel, TypeMode } from '#engine/model/fixture-type.ts';

/** The new name for a name; `nth` counts from 0 the earlier ones of the same name where names ought to be unique. */
export type Rename = (name: string, nth: number) => string;

/** A type with its model, its connector and every name of a part, mode, attribute, function and range renamed. */
export function renameAll(type: FixtureType, rename: Rename): FixtureType {
  const parts = new Counter();
  const modes = new Counter();
  return {
    ...type,
    model: unlessEmpty(type.model, rename),
    parts: type.parts.map((part) => ({
      ...part,
      name: rename(part.name, parts.seen(part.name)),
      within: part.within === null ? null : rename(part.within, 0),
      copy: part.copy === null ? null : { ...part.copy, of: rename(part.copy.of, 0) },
    })),
    modes: type.modes.map((mode) => renameMode(mode, modes.seen(mode.name), rename)),
    physical: { ...type.physical, connector: unlessEmpty(type.physical.connector, rename) },
  };
}

// The format lets these be empty, and an empty one says that there is none.
const unlessEmpty = (name: string, rename: Rename) => (name === '' ? '' : rename(name, 0));

class Counter {
  private readonly counts = new Map<string, number>();

  /** How often this was asked before. */
  seen(name: string): number {
    const count = this.counts.get(name) ?? 0;
    this.counts.set(name, count + 1);
    return count;
  }
}

function renameMode(mode: TypeMode, nth: number, rename: Rename): TypeMode {
  const attributes = new Counter();
  return {
    ...mode,
    name: rename(mode.name, nth),
    root: rename(mode.root, 0),
    channels: mode.channels.map((channel) => renameChannel(channel, attributes, rename)),
  };
}

const renameChannel = (channel: TypeChannel, attributes: Counter, rename: Rename): TypeChannel => ({
  ...channel,
  part: rename(channel.part, 0),
  initial: renameFunctionName(channel.initial, rename),
  // One part does one thing on one channel only: the standard names channels that way.
  uses: channel.uses.map((use) => renameUse(use, attributes.seen(`${channel.part}\n${use.attribute}`), rename)),
});

const renameFunctionName = (named: FunctionName | null, rename: Rename): FunctionName | null =>
  named === null ? null : { attribute: rename(named.attribute, 0), name: rename(named.name, 0) };

function renameUse(use: ChannelUse, nth: number, rename: Rename): ChannelUse {
  const names = new Counter();
  return {
    ...use,
    attribute: rename(use.attribute, nth),
    functions: use.functions.map((each) => ({
      ...each,
      name: rename(each.name, names.seen(each.name)),
      attribute: rename(each.attribute, 0),
      when:
        each.when === null
          ? null
          : {
              ...each.when,
              part: rename(each.when.part, 0),
              attribute: rename(each.when.attribute, 0),
              within: renameFunctionName(each.when.within, rename),
            },
      ranges: each.ranges.map((range) => ({ ...range, name: unlessEmpty(range.name, rename) })),
    })),
  };
}
