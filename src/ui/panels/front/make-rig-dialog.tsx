import { useMutation, useQuery } from '@tanstack/react-query';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import type { CrewSummary } from '#wire/crews.ts';
import type { RigKind, RigSummary } from '#wire/rigs.ts';
import { MAKE_RIG_WORDS } from '#words/front.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import type { Said } from '../../kit/message.tsx';
import { Select } from '../../kit/select.tsx';
import { AskNameDialog } from '../ask-name-dialog.tsx';
import { BeginSelect } from './begin-select.tsx';

export interface MakeRigDialogProps {
  /** The crews I may make one for; at least one. */
  readonly crews: readonly CrewSummary[];
  readonly onClose: () => void;
}

const KINDS = (['show', 'house'] as const).map((kind) => ({ value: kind, label: MAKE_RIG_WORDS.kinds[kind] }));

/** Makes an empty rig and goes to it. */
export function MakeRigDialog({ crews, onClose }: MakeRigDialogProps) {
  const trpc = useTRPC();
  const router = useRouter();
  const [crewId, setCrew] = useState(crews[0]?.id ?? '');
  const [kind, setKind] = useState<RigKind>('show');
  const [venueId, setVenue] = useState('');
  const [refused, setRefused] = useState<Said>();
  const venues = useQuery(trpc.venues.list.queryOptions()).data?.filter((venue) => venue.crewId === crewId) ?? [];
  const [houseId, setHouse] = useState('');
  const from = kind === 'show' ? houseId : '';
  const frozen = useQuery(trpc.revisions.list.queryOptions({ rigId: from }, { enabled: from !== '' })).data;
  const made = {
    onSuccess: (rig: RigSummary) => router.push(`/rigs/${rig.id}`),
    onError: (error: { readonly message: string }) => setRefused(saidOf(error)),
  };
  const create = useMutation(trpc.rigs.create.mutationOptions(made));
  const start = useMutation(trpc.revisions.start.mutationOptions(made));
  const make = (name: string) => {
    if (kind === 'house' && venueId === '') return setRefused({ what: MAKE_RIG_WORDS.houseNeedsVenue });
    const asked = { crewId, name, kind, venueId: venueId === '' ? null : venueId };
    const newest = frozen?.[0]?.number;
    if (from !== '' && newest === undefined) return setRefused({ what: MAKE_RIG_WORDS.noRevision });
    setRefused(undefined);
    if (newest === undefined) create.mutate(asked);
    else start.mutate({ ...asked, rigId: from, number: newest });
  };
  return (
    <AskNameDialog
      title={MAKE_RIG_WORDS.title}
      label={MAKE_RIG_WORDS.name}
      hint={MAKE_RIG_WORDS.nameHint}
      submit={MAKE_RIG_WORDS.submit}
      busy={create.isPending || start.isPending || (from !== '' && frozen === undefined)}
      refused={refused}
      onName={make}
      onClose={onClose}
    >
      <Select
        label={MAKE_RIG_WORDS.crew}
        choices={crews.map(({ id, name }) => ({ value: id, label: name }))}
        value={crewId}
        onChoose={(id) => {
          setCrew(id);
          setVenue('');
        }}
      />
      <Select label={MAKE_RIG_WORDS.kind} choices={KINDS} value={kind} onChoose={setKind} />
      {kind === 'show' ? <BeginSelect value={houseId} onChoose={setHouse} /> : null}
      <Select
        label={MAKE_RIG_WORDS.venue}
        hint={MAKE_RIG_WORDS.venueHint}
        choices={[
          { value: '', label: MAKE_RIG_WORDS.noVenue },
          ...venues.map(({ id, name }) => ({ value: id, label: name })),
        ]}
        value={venueId}
        onChoose={setVenue}
      />
    </AskNameDialog>
  );
}
