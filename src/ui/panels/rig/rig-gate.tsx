import type { ReactNode } from 'react';
import type { RigSummary } from '#wire/rigs.ts';
import { RIG_MENU_WORDS } from '#words/rig-pages.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { saidOf } from '../../kit/data/unreachable.ts';
import { useRig } from '../../kit/data/use-rigs.ts';
import { Message } from '../../kit/message.tsx';
import { PageFrame } from '../../kit/page-frame.tsx';
import { SignedIn } from '../signed-in.tsx';
import type { RigPage } from './rig-address.ts';
import { RigBanner } from './rig-banner.tsx';

export interface RigGateProps {
  readonly rigId: string;
  readonly page: RigPage;
  readonly children: (rig: RigSummary) => ReactNode;
}

/** Shows a page of a rig to whoever may see it; to others, why not and what to do next. */
export function RigGate({ rigId, page, children }: RigGateProps) {
  const rig = useRig(rigId);
  if (rig.value !== undefined) return children(rig.value);
  return (
    <PageFrame title={RIG_MENU_WORDS.rig} banner={<RigBanner rig={undefined} rigId={rigId} page={page} />}>
      <SignedIn>
        {() =>
          rig.error === null ? (
            <p className="text-soft">{KIT_WORDS.loading}</p>
          ) : (
            <Message severity="blocker" said={saidOf(rig.error)} />
          )
        }
      </SignedIn>
    </PageFrame>
  );
}
