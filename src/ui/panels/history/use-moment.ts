import { useQuery } from '@tanstack/react-query';
import { thawRig } from '#document/frozen/frozen-rig.ts';
import type { Rig } from '#engine/model/rig.ts';
import { type HistoryStep, momentPath } from '#wire/history.ts';
import { MOMENT_WORDS } from '#words/history.ts';
import { UNREACHABLE } from '#words/screens.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';
import type { Said } from '../../kit/message.tsx';

export interface MomentAnswer {
  readonly rig: Rig | undefined;
  /** Why there is none. */
  readonly refused: Said | undefined;
}

/** A rig as it was after a step of its log. */
export function useMoment(rigId: string, seq: number): MomentAnswer {
  const asked = useQuery({
    queryKey: ['moment', rigId, seq],
    queryFn: () => readMoment(rigId, seq),
    staleTime: Number.POSITIVE_INFINITY,
    retry: false,
  });
  if (asked.error !== null) return { rig: undefined, refused: UNREACHABLE };
  return asked.data ?? { rig: undefined, refused: undefined };
}

async function readMoment(rigId: string, seq: number): Promise<MomentAnswer> {
  const response = await fetch(momentPath(rigId, seq));
  if (!response.ok) {
    const { message }: { readonly message?: string } = await response.json();
    return { rig: undefined, refused: { what: message ?? UNREACHABLE.what } };
  }
  const thawed = thawRig(await response.text());
  return thawed.ok
    ? { rig: thawed.value, refused: undefined }
    : { rig: undefined, refused: { what: MOMENT_WORDS.unreadable } };
}

/** The last step up to a moment that changed something; undefined until it is known, null when there is none. */
export function useStepAt(rigId: string, seq: number): HistoryStep | null | undefined {
  const filter = { unit: null, named: null, field: null, person: null, from: null, to: null };
  const page = useQuery(useTRPC().history.steps.queryOptions({ rigId, filter, cursor: seq + 1 })).data;
  return page === undefined ? undefined : (page.steps[0] ?? null);
}
