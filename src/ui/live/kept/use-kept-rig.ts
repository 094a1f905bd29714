import { skipToken, useQuery } from '@tanstack/react-query';
import { systemClock } from '#base/clock.ts';
import { thawRig } from '#document/frozen/frozen-rig.ts';
import type { Rig } from '#engine/model/rig.ts';
import { revisionPath } from '#wire/record.ts';
import { useMe } from '../../kit/data/use-me.ts';
import { keepRevision, keptRevision } from './kept-revisions.ts';

/** A revision of a rig, and the hash by which it is known. */
export interface RevisionAt {
  readonly rigId: string;
  readonly number: number;
  readonly hash: string;
}

/** Why a revision cannot be looked at. */
type KeptTrouble = 'unreachable' | 'foreign' | 'unreadable';

class NotThawed extends Error {
  constructor(readonly trouble: KeptTrouble) {
    super(trouble);
  }
}

export interface KeptRig {
  /** Undefined until it is there. */
  readonly rig: Rig | undefined;
  readonly trouble: KeptTrouble | undefined;
}

/** A revision as a rig, for what must open without a network: once it was on this device it stays there. */
export function useKeptRig(at: RevisionAt): KeptRig {
  const user = useMe().value?.user?.id;
  const { data, error } = useQuery({
    queryKey: ['kept', user, at.hash],
    queryFn: user === undefined ? skipToken : () => read(user, at),
    // What a hash names never changes, and a rig is no plain data to be compared.
    staleTime: 'static',
    structuralSharing: false,
    retry: false,
  });
  const trouble = error instanceof NotThawed ? error.trouble : error === null ? undefined : 'unreachable';
  return { rig: data, trouble };
}

async function read(user: string, { rigId, number, hash }: RevisionAt): Promise<Rig> {
  const kept = await keptRevision(user, hash);
  const known = kept === undefined ? undefined : thawRig(kept);
  if (known?.ok) return known.value;
  const text = await ask(revisionPath(rigId, number, 'rig'));
  const thawed = thawRig(text);
  if (!thawed.ok) throw new NotThawed('unreadable');
  await keepRevision(user, { hash, text, at: systemClock.now() });
  return thawed.value;
}

async function ask(path: string): Promise<string> {
  const answer = await fetch(path).catch(() => undefined);
  if (answer?.ok) return answer.text();
  throw new NotThawed(answer !== undefined && answer.status < 500 ? 'foreign' : 'unreachable');
}
