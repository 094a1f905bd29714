import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { CAPS } from '#wire/caps.ts';
import type { OfferedRevision, ReceiveFile } from '#wire/handovers.ts';
import type { RigKind } from '#wire/rigs.ts';
import { MAKE_RIG_WORDS } from '#words/front.ts';
import { RECEIVE_WORDS as words } from '#words/handovers.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { Select } from '../../kit/select.tsx';
import { TextField } from '../../kit/text-field.tsx';

/** What the receiving crew's rig will be; at first as the giver's is. */
export function useNewRig({ rigName, rigKind }: OfferedRevision) {
  return useState<ReceiveFile>({ name: rigName.slice(0, CAPS.nameLength), kind: rigKind, venueId: null });
}

interface NewRigFieldsProps {
  readonly crewId: string;
  readonly rig: ReceiveFile;
  readonly onRig: (rig: ReceiveFile) => void;
}

const KINDS = (['show', 'house'] as const).map((kind: RigKind) => ({ value: kind, label: MAKE_RIG_WORDS.kinds[kind] }));

/** Asks what the rig is called, what it is, and where. */
export function NewRigFields({ crewId, rig, onRig }: NewRigFieldsProps) {
  const venues = useQuery(useTRPC().venues.list.queryOptions()).data?.filter((venue) => venue.crewId === crewId) ?? [];
  return (
    <>
      <TextField
        label={words.name}
        value={rig.name}
        required
        maxLength={CAPS.nameLength}
        onText={(name) => onRig({ ...rig, name })}
      />
      <Select label={words.kind} choices={KINDS} value={rig.kind} onChoose={(kind) => onRig({ ...rig, kind })} />
      {venues.length === 0 ? null : (
        <Select
          label={words.venue}
          hint={words.venueHint}
          choices={[{ value: '', label: words.noVenue }, ...venues.map(({ id, name }) => ({ value: id, label: name }))]}
          value={rig.venueId ?? ''}
          onChoose={(venueId) => onRig({ ...rig, venueId: venueId === '' ? null : venueId })}
        />
      )}
    </>
  );
}
