import { readAttribute } from '#engine/type/read-attribute.ts';
import type { Channel } from './channel.ts';

/** The most bytes of a channel (GDTF: 32 bit). */
const MOST = 4;

/**
 * Coarse and fine rows as one channel, adjacent or not. Only what is sure: the same name besides the words about bytes, or a
 * row that says nothing but `fine` right behind the row it refines.
 */
export function mergeBytes(channels: readonly Channel[]): readonly Channel[] {
  const merged: Channel[] = [];
  // Where in `merged` a channel stands that lacks its finer bytes, or a fine one that lacks its coarse byte.
  const open = new Map<string, number>();
  const orphans = new Map<string, number>();
  for (const channel of channels) {
    const kind = byteKind(channel, open);
    const at = kind === 'finer' ? coarseFor(channel, open, merged) : undefined;
    const target = at === undefined ? undefined : merged[at];
    const orphanAt = kind === 'coarse' ? orphans.get(channel.key) : undefined;
    const orphan = orphanAt === undefined ? undefined : merged[orphanAt];
    if (at !== undefined && target !== undefined) merged[at] = withFiner(target, channel);
    else if (orphanAt !== undefined && orphan !== undefined) {
      merged[orphanAt] = withFiner(channel, orphan);
      orphans.delete(channel.key);
      open.set(channel.key, orphanAt);
    } else {
      (kind === 'finer' ? orphans : open).set(channel.key, merged.length);
      merged.push(channel);
    }
  }
  const alone = new Set(orphans.values());
  return merged.map((channel, at) => (alone.has(at) ? asAlone(channel) : settled(channel)));
}

function byteKind(channel: Channel, open: ReadonlyMap<string, number>): 'coarse' | 'finer' {
  if (channel.slots.length > 1 && channel.bytes !== 'ultra') return 'coarse';
  if (channel.bytes === 'fine' || channel.bytes === 'ultra') return 'finer';
  // `Pan` then `Pan 16 bit`: the second is the fine byte. Alone, or before `Pan fine`, it is the coarse one.
  const says = channel.bytes === 'wide' || channel.bytes === 'wider';
  return says && open.has(channel.key) ? 'finer' : 'coarse';
}

function coarseFor(
  channel: Channel,
  open: ReadonlyMap<string, number>,
  merged: readonly Channel[],
): number | undefined {
  if (channel.key === '') {
    const last = merged.at(-1);
    const next = (last?.slots.at(-1) ?? -1) + 1 === channel.slots[0];
    return next && last !== undefined && last.slots.length < MOST ? merged.length - 1 : undefined;
  }
  const at = open.get(channel.key);
  const target = at === undefined ? undefined : merged[at];
  if (target === undefined || target.slots.length + channel.slots.length > MOST) return undefined;
  if (channel.slots.some((slot) => target.slots.includes(slot))) return undefined;
  const deep = channel.bytes === 'ultra' || channel.bytes === 'wider';
  return target.slots.length === 1 || deep ? at : undefined;
}

function withFiner(coarse: Channel, fine: Channel): Channel {
  const values = fine.values
    .filter((value) => value.text !== '' && !(value.from === 0 && value.to >= 255))
    .map((value) => value.text);
  const said = [...values, ...fine.notes].filter((text) => text !== '');
  const remark = said.length === 0 ? [] : [{ code: 'fine-values' as const, text: said.join('; ') }];
  return {
    ...coarse,
    slots: [...coarse.slots, ...fine.slots],
    default: coarse.default,
    raws: [...coarse.raws, ...fine.raws],
    remarks: [...coarse.remarks, ...fine.remarks, ...remark],
  };
}

const asAlone = (channel: Channel): Channel => ({
  ...channel,
  guess: channel.guess === 'sure' ? 'likely' : channel.guess,
  remarks: [...channel.remarks, { code: 'fine-alone', text: channel.name }],
});

/** A name says nothing of bytes any more once its slots do. */
function settled(channel: Channel): Channel {
  if (channel.slots.length === 1 || channel.bytes === 'none') return channel;
  const { name } = readAttribute(channel.name);
  return name === '' ? channel : { ...channel, name };
}
