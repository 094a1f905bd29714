import { useMutation, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { CrewSummary } from '#wire/crews.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { START_WORDS as words } from '#words/revisions.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { Dialog } from '../../kit/dialog.tsx';
import { Select } from '../../kit/select.tsx';
import { goTo } from '../../kit/stay-link.tsx';
import { AskNameDialog } from '../ask-name-dialog.tsx';
import { rigPath } from '../rig/rig-address.ts';

export interface StartRigDialogProps {
  readonly rig: RigSummary;
  readonly number: number;
  readonly onClose: () => void;
}

/** Makes a show rig that begins as a revision, for one of my crews, and goes to it. */
export function StartRigDialog(props: StartRigDialogProps) {
  const crews = useQuery(useTRPC().crews.list.queryOptions()).data;
  if (crews === undefined) return null;
  const mine = crews.filter(({ role }) => role !== 'reader');
  if (mine.length > 0) return <Asked {...props} crews={mine} />;
  return (
    <Dialog
      title={words.title(props.number)}
      onClose={props.onClose}
      answers={<Button onClick={props.onClose}>{KIT_WORDS.close}</Button>}
    >
      <p>{words.noCrew}</p>
    </Dialog>
  );
}

interface AskedProps extends StartRigDialogProps {
  /** Those in which I may make rigs; at least one. */
  readonly crews: readonly CrewSummary[];
}

function Asked({ rig, number, onClose, crews }: AskedProps) {
  const trpc = useTRPC();
  const own = crews.find(({ id }) => id === rig.crewId) ?? crews[0];
  const [crewId, setCrew] = useState(own?.id ?? '');
  const [venueId, setVenue] = useState(own?.id === rig.crewId ? (rig.venueId ?? '') : '');
  const venues = useQuery(trpc.venues.list.queryOptions()).data?.filter((venue) => venue.crewId === crewId) ?? [];
  const start = useMutation(
    trpc.revisions.start.mutationOptions({ onSuccess: (made) => goTo(rigPath(made.id, 'sheet')) }),
  );
  return (
    <AskNameDialog
      title={words.title(number)}
      label={words.name}
      hint={words.nameHint}
      submit={words.submit}
      busy={start.isPending}
      refused={start.error === null ? undefined : saidOf(start.error)}
      onName={(name) =>
        start.mutate({
          rigId: rig.id,
          number,
          crewId,
          name,
          kind: 'show',
          venueId: venueId === '' ? null : venueId,
        })
      }
      onClose={onClose}
    >
      <Select
        label={words.crew}
        choices={crews.map(({ id, name }) => ({ value: id, label: name }))}
        value={crewId}
        onChoose={(id) => {
          setCrew(id);
          setVenue('');
        }}
      />
      <Select
        label={words.venue}
        choices={[{ value: '', label: words.noVenue }, ...venues.map(({ id, name }) => ({ value: id, label: name }))]}
        value={venueId}
        onChoose={setVenue}
      />
    </AskNameDialog>
  );
}
