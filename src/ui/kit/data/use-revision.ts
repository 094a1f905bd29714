import { useQuery } from '@tanstack/react-query';
import { thawRig } from '#document/frozen/frozen-rig.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { Rig } from '#engine/model/rig.ts';
import { type RevisionPart, type RigRevisionSummary, revisionPath } from '#wire/record.ts';
import { REVISIONS_WORDS } from '#words/revisions.ts';
import { useTRPC } from './trpc.tsx';
import { RefusedRequest } from './unreachable.ts';

/** What the server answered so far: undefined until it did, and why it refused. */
interface Answer<T> {
  readonly value: T | undefined;
  readonly error: { readonly message: string } | null;
}

/** Somebody else's freeze shows up within this time. */
const LOOK_AGAIN_MS = 5_000;

/** A revision never changes: it is asked for once, and its rows are not compared with anything. */
const FOREVER = { staleTime: 'static', structuralSharing: false } as const;

/** The revisions of a rig, the newest first. */
export function useRevisions(rigId: string): Answer<readonly RigRevisionSummary[]> {
  const asked = useQuery(useTRPC().revisions.list.queryOptions({ rigId }, { refetchInterval: LOOK_AGAIN_MS }));
  return { value: asked.data, error: asked.error };
}

/** A rig as it was frozen. */
export function useFrozenRig(rigId: string, number: number): Answer<Rig> {
  const asked = useQuery({
    ...FOREVER,
    queryKey: ['revision', rigId, number, 'rig'],
    queryFn: async (): Promise<Rig> => thawed(await fetchPart(rigId, number, 'rig')),
  });
  return { value: asked.data, error: asked.error };
}

/** What the rules said of a rig when it was frozen. */
export function useFrozenFindings(rigId: string, number: number): Answer<readonly Finding[]> {
  const asked = useQuery({
    ...FOREVER,
    queryKey: ['revision', rigId, number, 'findings'],
    // Written by our own server when it froze the rig, and never changed since.
    queryFn: async (): Promise<readonly Finding[]> => JSON.parse(await fetchPart(rigId, number, 'findings')),
  });
  return { value: asked.data, error: asked.error };
}

const fetchPart = (rigId: string, number: number, part: RevisionPart): Promise<string> =>
  fetchText(revisionPath(rigId, number, part), REVISIONS_WORDS.gone(number));

/** What an address of ours answers; `otherwise` is said when whoever refused it has no sentence. */
export async function fetchText(path: string, otherwise: string): Promise<string> {
  const response = await fetch(path);
  const text = await response.text();
  if (response.ok) return text;
  throw new RefusedRequest(sentenceIn(text) ?? otherwise);
}

/** A frozen rig that came as text. */
export function thawed(text: string): Rig {
  const rig = thawRig(text);
  if (!rig.ok) throw new RefusedRequest(REVISIONS_WORDS[rig.error === 'newer' ? 'newer' : 'damaged']);
  return rig.value;
}

/** The sentence of a refusal of one of our addresses. */
export function sentenceIn(text: string): string | undefined {
  try {
    const { message } = JSON.parse(text);
    return typeof message === 'string' ? message : undefined;
  } catch {
    // No answer of ours: something on the way refused.
    return undefined;
  }
}
