import { useQuery } from '@tanstack/react-query';
import type { Finding } from '#engine/model/finding.ts';
import type { Rig } from '#engine/model/rig.ts';
import { handoverPath } from '#wire/handovers.ts';
import { REFUSAL_SENTENCES } from '#words/refusals.ts';
import { fetchText, thawed } from '../../kit/data/use-revision.ts';
import type { Answer } from '../library/use-library.ts';

/** A rig that is handed over, with what the rules said of it. */
export interface Offered {
  readonly rig: Rig;
  readonly findings: readonly Finding[];
}

/** What the link of an offer gives. It never changes while it is there. */
export function useOffered(token: string): Answer<Offered> {
  const asked = useQuery({
    staleTime: 'static',
    structuralSharing: false,
    queryKey: ['handover', token],
    queryFn: async (): Promise<Offered> => {
      const gone = REFUSAL_SENTENCES['no-such-handover'];
      const [rig, findings] = await Promise.all([
        fetchText(handoverPath(token, 'rig'), gone),
        fetchText(handoverPath(token, 'findings'), gone),
      ]);
      return { rig: thawed(rig), findings: JSON.parse(findings) };
    },
  });
  return { value: asked.data, error: asked.error };
}
