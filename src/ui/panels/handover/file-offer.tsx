import { useMutation, useQuery } from '@tanstack/react-query';
import { useRouter } from 'next/navigation';
import type { HandoverFileLook } from '#wire/handovers.ts';
import { RECEIVE_WORDS as words } from '#words/handovers.ts';
import { Button } from '../../kit/button.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { thawed } from '../../kit/data/use-revision.ts';
import { Message } from '../../kit/message.tsx';
import { TextLink } from '../../kit/text-link.tsx';
import { Asked } from '../library/asked.tsx';
import { Part } from '../part.tsx';
import { rigPath } from '../rig/rig-address.ts';
import { HandedOver } from './handed-over.tsx';
import { inflateText } from './inflate-text.ts';
import { NewRigFields, useNewRig } from './new-rig-fields.tsx';
import { OfferHead } from './offer-head.tsx';
import { takeHandover } from './send-handover.ts';
import { SinceLastHad } from './since-last-had.tsx';

export interface FileOfferProps {
  readonly crewId: string;
  readonly file: File;
  readonly look: HandoverFileLook;
}

/** What a handover file brings, and the way to make a rig of it. */
export function FileOffer({ crewId, file, look }: FileOfferProps) {
  const opened = useQuery({
    staleTime: 'static',
    structuralSharing: false,
    queryKey: ['handover-file', look.hash],
    queryFn: async () => ({
      rig: thawed(await inflateText(look.rig)),
      findings: JSON.parse(await inflateText(look.findings)),
    }),
  });
  return (
    <>
      <OfferHead offer={look} />
      {look.here === null ? null : (
        <Message severity="caution" said={{ what: words.here(look.here.rigName, look.here.at) }}>
          <TextLink href={rigPath(look.here.rigId, 'sheet')}>{words.toRig(look.here.rigName)}</TextLink>
        </Message>
      )}
      <TakePart crewId={crewId} file={file} look={look} />
      <Asked answer={{ value: opened.data, error: opened.error }}>
        {({ rig, findings }) => (
          <>
            <SinceLastHad last={look.lastHad[0]} offered={rig} rigName={look.rigName} />
            <HandedOver rig={rig} findings={findings} number={look.number} />
          </>
        )}
      </Asked>
    </>
  );
}

function TakePart({ crewId, file, look }: FileOfferProps) {
  const router = useRouter();
  const [rig, setRig] = useNewRig(look);
  const take = useMutation({
    mutationFn: () => takeHandover(crewId, file, rig),
    onSuccess: ({ id }) => router.push(rigPath(id, 'sheet')),
  });
  return (
    <Part title={words.fileAnswer}>
      <form
        className="flex max-w-prose flex-col gap-4 py-3"
        onSubmit={(event) => {
          event.preventDefault();
          take.mutate();
        }}
      >
        <p>{words.acceptAbout}</p>
        <NewRigFields crewId={crewId} rig={rig} onRig={setRig} />
        <div>
          <Button type="submit" look="main" disabled={take.isPending || rig.name.trim() === ''}>
            {words.take}
          </Button>
        </div>
        {take.error === null ? null : <Message severity="blocker" said={saidOf(take.error)} />}
      </form>
    </Part>
  );
}
