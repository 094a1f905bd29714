import { useQuery } from '@tanstack/react-query';
import { useMemo, useState } from 'react';
import { ARCHIVE_WORDS } from '#words/archive.ts';
import { FRONT_WORDS } from '#words/front.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { useRigs } from '../../kit/data/use-rigs.ts';
import { Message } from '../../kit/message.tsx';
import { ArchiveInDialog } from './archive-in-dialog.tsx';
import { CrewSection } from './crew-section.tsx';
import { groupRigs } from './group-rigs.ts';
import { MakeCrewDialog } from './make-crew-dialog.tsx';
import { MakeRigDialog } from './make-rig-dialog.tsx';

/** The rigs of all my crews, by crew and venue, and the ways to make more. */
export function MyRigs() {
  const trpc = useTRPC();
  const rigs = useRigs();
  const crews = useQuery(trpc.crews.list.queryOptions()).data;
  const [asking, setAsking] = useState<'rig' | 'crew' | 'archive'>();
  const groups = useMemo(() => groupRigs(rigs.value ?? [], crews ?? []), [rigs.value, crews]);
  if (rigs.error !== null) return <Message severity="blocker" said={saidOf(rigs.error)} />;
  if (rigs.value === undefined) return <p className="text-soft">{KIT_WORDS.loading}</p>;
  const writable = (crews ?? []).filter((crew) => crew.role !== 'reader');
  return (
    <>
      <div className="flex flex-wrap items-center justify-between gap-3">
        <h2 className="text-name">{FRONT_WORDS.rigs}</h2>
        <div className="flex flex-wrap gap-2">
          {writable.length === 0 ? null : <Button onClick={() => setAsking('rig')}>{FRONT_WORDS.makeRig}</Button>}
          {crews === undefined ? null : (
            <>
              <Button onClick={() => setAsking('crew')}>{FRONT_WORDS.makeCrew}</Button>
              <Button onClick={() => setAsking('archive')}>{ARCHIVE_WORDS.in}</Button>
            </>
          )}
        </div>
      </div>
      {rigs.fresh ? null : <p className="text-caution">{FRONT_WORDS.keptRigs}</p>}
      {rigs.fresh && crews?.length === 0 ? <p>{FRONT_WORDS.noCrews}</p> : null}
      {groups.map((group) => (
        <CrewSection key={group.id} crew={group} />
      ))}
      {asking === 'rig' ? <MakeRigDialog crews={writable} onClose={() => setAsking(undefined)} /> : null}
      {asking === 'archive' ? <ArchiveInDialog onClose={() => setAsking(undefined)} /> : null}
      {asking === 'crew' ? <MakeCrewDialog onClose={() => setAsking(undefined)} /> : null}
    </>
  );
}
