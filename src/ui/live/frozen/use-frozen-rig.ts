import { useQuery } from '@tanstack/react-query';
import { systemClock } from '#base/clock.ts';
import { thawRig } from '#document/frozen/frozen-rig.ts';
import type { Rig } from '#engine/model/rig.ts';
import { revisionPath } from '#wire/record.ts';
import { useMe } from '../../kit/data/use-me.ts';
import { frozenCopy, keepFrozen } from './frozen-copies.ts';

/** A revision of a rig, and the hash by which it is known. */
export interface FrozenAt {
  readonly rigId: string;
  readonly number: number;
  readonly hash: string;
}

/** Why a revision cannot be looked at. */
export type FrozenTrouble = 'unreachable' | 'foreign' | 'unreadable';

class NotThawed extends Error {
  constructor(readonly trouble: FrozenTrouble) {
    super(trouble);
  }
}

export interface FrozenRig {
  /** Undefined until it is there. */
  readonly rig: Rig | undefined;
  readonly trouble: FrozenTrouble | undefined;
}

/** A revision as a rig; once it was here it is here without a network too. */
export function useFrozenRig(at: FrozenAt | undefined): FrozenRig {
  const user = useMe().value?.user?.id;
  const { data, error } = useQuery({
    queryKey: ['frozen', user, at?.hash],
    enabled: user !== undefined && at !== undefined,
    queryFn: () => (user === undefined || at === undefined ? Promise.reject(new NotThawed('foreign')) : read(user, at)),
    // What a hash names never changes, and a rig is no plain data to be compared.
    staleTime: 'static',
    structuralSharing: false,
    retry: false,
  });
  const trouble = error instanceof NotThawed ? error.trouble : error === null ? undefined : 'unreachable';
  return { rig: data, trouble };
}

async function read(user: string, { rigId, number, hash }: FrozenAt): Promise<Rig> {
  const kept = await frozenCopy(user, hash);
  const text = kept ?? (await ask(revisionPath(rigId, number, 'rig')));
  const thawed = thawRig(text);
  if (!thawed.ok) throw new NotThawed('unreadable');
  if (kept === undefined) await keepFrozen(user, { hash, text, at: systemClock.now() });
  return thawed.value;
}

async function ask(path: string): Promise<string> {
  const answer = await fetch(path).catch(() => undefined);
  if (answer?.ok) return answer.text();
  throw new NotThawed(answer !== undefined && answer.status < 500 ? 'foreign' : 'unreachable');
}
