import { useMutation, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { CrewDetail } from '#wire/crews.ts';
import type { VenueSummary } from '#wire/venues.ts';
import { CREW_WORDS } from '#words/crew.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { AskNameDialog } from '../ask-name-dialog.tsx';
import { Part } from '../part.tsx';

/** The crew's venues; leads and editors add and rename them. */
export function CrewVenues({ crew }: { readonly crew: CrewDetail }) {
  const trpc = useTRPC();
  const venues = useQuery(trpc.venues.list.queryOptions()).data?.filter((venue) => venue.crewId === crew.id) ?? [];
  const [asking, setAsking] = useState<VenueSummary | 'new'>();
  const writable = crew.role !== 'reader';
  const add = writable ? <Button onClick={() => setAsking('new')}>{CREW_WORDS.addVenue}</Button> : undefined;
  return (
    <Part title={CREW_WORDS.venues} actions={add}>
      {venues.length === 0 ? <p className="py-2 text-soft">{CREW_WORDS.noVenues}</p> : null}
      <ul>
        {venues.map((venue) => (
          <li key={venue.id} className="flex min-h-row flex-wrap items-center gap-x-4 border-b border-rule px-2">
            <span className="font-serif text-large">{venue.name}</span>
            {writable ? (
              <LinkButton
                className="ml-auto"
                aria-label={`${CREW_WORDS.rename} ${venue.name}`}
                onClick={() => setAsking(venue)}
              >
                {CREW_WORDS.rename}
              </LinkButton>
            ) : null}
          </li>
        ))}
      </ul>
      {asking === 'new' ? <AddVenueDialog crewId={crew.id} onClose={() => setAsking(undefined)} /> : null}
      {asking !== undefined && asking !== 'new' ? (
        <RenameVenueDialog venue={asking} onClose={() => setAsking(undefined)} />
      ) : null}
    </Part>
  );
}

function AddVenueDialog({ crewId, onClose }: { readonly crewId: string; readonly onClose: () => void }) {
  const trpc = useTRPC();
  const create = useMutation(trpc.venues.create.mutationOptions({ onSuccess: onClose }));
  return (
    <AskNameDialog
      title={CREW_WORDS.addVenue}
      label={CREW_WORDS.venueName}
      submit={CREW_WORDS.addVenueSubmit}
      busy={create.isPending}
      refused={create.error ? saidOf(create.error) : undefined}
      onName={(name) => create.mutate({ crewId, name })}
      onClose={onClose}
    />
  );
}

function RenameVenueDialog({ venue, onClose }: { readonly venue: VenueSummary; readonly onClose: () => void }) {
  const trpc = useTRPC();
  const rename = useMutation(trpc.venues.rename.mutationOptions({ onSuccess: onClose }));
  return (
    <AskNameDialog
      title={CREW_WORDS.renameVenueTitle}
      label={CREW_WORDS.venueName}
      submit={CREW_WORDS.renameSubmit}
      initial={venue.name}
      busy={rename.isPending}
      refused={rename.error ? saidOf(rename.error) : undefined}
      onName={(name) => rename.mutate({ venueId: venue.id, name })}
      onClose={onClose}
    />
  );
}
