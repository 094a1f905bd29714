import { useQuery } from '@tanstack/react-query';
import type { CrewDetail } from '#wire/crews.ts';
import type { HandoverSummary } from '#wire/handovers.ts';
import { HANDOVERS_WORDS as words } from '#words/handovers.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { TextLink } from '../../kit/text-link.tsx';
import { Asked } from '../library/asked.tsx';
import { Part } from '../part.tsx';
import { OfferLines } from './offer-lines.tsx';

/** What the crew gave away and what it was offered, and the way to bring in a file. */
export function CrewHandovers({ crew }: { readonly crew: CrewDetail }) {
  const handovers = useQuery(useTRPC().handovers.ofCrew.queryOptions({ crewId: crew.id }));
  const writable = crew.role !== 'reader';
  const bring = writable ? <TextLink href={`/crews/${crew.id}/handover`}>{words.bring}</TextLink> : undefined;
  return (
    <Part title={words.title} about={words.about} actions={bring}>
      <Asked answer={{ value: handovers.data, error: handovers.error }}>
        {(all) =>
          all.length === 0 ? (
            <p className="py-2 text-soft">{words.none}</p>
          ) : (
            <OfferLines handovers={all} titleOf={titleOf} writable={writable} />
          )
        }
      </Asked>
    </Part>
  );
}

const titleOf = ({ way, rigName, number, crewName }: HandoverSummary): string =>
  way === 'given' ? words.given(rigName, number) : words.received(rigName, number, crewName);
