import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useParams, useRouter } from 'next/navigation';
import { type ReactNode, useEffect, useState, useSyncExternalStore } from 'react';
import type { DraftDetails } from '#wire/library.ts';
import { DRAFT_SCREEN_WORDS, PUBLISH_WORDS } from '#words/draft-screen.ts';
import { LIBRARY_WORDS } from '#words/library.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { useTRPC } from '../kit/data/trpc.tsx';
import { saidOf } from '../kit/data/unreachable.ts';
import { useMe } from '../kit/data/use-me.ts';
import { Message } from '../kit/message.tsx';
import { PageFrame } from '../kit/page-frame.tsx';
import { SaveState } from '../kit/save-state.tsx';
import { TextLink } from '../kit/text-link.tsx';
import { connectDraft } from '../live/connect-draft.ts';
import type { DraftStore } from '../live/draft-store.ts';
import { Banner } from '../panels/banner.tsx';
import { libraryPath, typePath } from '../panels/library/library-address.ts';
import { SignedIn } from '../panels/signed-in.tsx';
import { PeopleHere } from '../workspace/people-here.tsx';
import type { Doors } from './doors.ts';
import { DraftScreen } from './draft-screen.tsx';
import { useReading } from './use-desk.ts';

/** Opens the draft in the address for whoever may see it; to others, why not and what to do next. */
export function OpenDraft() {
  const { draft } = useParams<{ draft: string }>();
  const asked = useQuery(useTRPC().library.draft.queryOptions({ draftId: draft }));
  if (asked.data !== undefined) {
    const details = asked.data;
    return (
      <SignedInPage>{(user) => <Opened key={`${user} ${details.id}`} user={user} details={details} />}</SignedInPage>
    );
  }
  return (
    <SignedInPage>
      {() => (
        <DraftFrame name={DRAFT_SCREEN_WORDS.title}>
          {asked.error === null ? (
            <p className="text-soft">{KIT_WORDS.loading}</p>
          ) : (
            <Message severity="blocker" said={saidOf(asked.error)} />
          )}
        </DraftFrame>
      )}
    </SignedInPage>
  );
}

/** The whole page for whoever is signed in; the way in, framed, for others. */
function SignedInPage({ children }: { readonly children: (user: string) => ReactNode }) {
  const me = useMe();
  const user = me.value?.user?.id;
  if (user !== undefined) return children(user);
  return (
    <DraftFrame name={DRAFT_SCREEN_WORDS.title}>
      <SignedIn>{() => null}</SignedIn>
    </DraftFrame>
  );
}

interface DraftFrameProps {
  readonly name: string;
  readonly about?: ReactNode;
  readonly aside?: ReactNode;
  readonly children: ReactNode;
}

function DraftFrame({ name, about, aside, children }: DraftFrameProps) {
  return (
    <PageFrame title={name} width="wide" banner={<Banner name={name} about={about} aside={aside} />}>
      {children}
    </PageFrame>
  );
}

interface OpenedProps {
  readonly user: string;
  readonly details: DraftDetails;
}

function Opened({ user, details }: OpenedProps) {
  const [store, setStore] = useState<DraftStore>();
  const { id, baseType } = details;
  const known = details.role === 'reader' || details.state !== 'open' ? 'reader' : 'writer';
  // What the draft started from never changes; the right to write is told by the server from now on.
  const [first] = useState({ baseType, known } as const);
  useEffect(() => {
    const opened = connectDraft({ user, draft: id, base: first.baseType, known: first.known });
    setStore(opened);
    return () => {
      setStore(undefined);
      opened.close();
    };
  }, [user, id, first]);
  if (store === undefined) {
    return (
      <DraftFrame name={DRAFT_SCREEN_WORDS.title}>
        <p className="text-soft">{KIT_WORDS.loading}</p>
      </DraftFrame>
    );
  }
  return <OpenStore store={store} details={details} />;
}

function OpenStore({ store, details }: { readonly store: DraftStore; readonly details: DraftDetails }) {
  const { draft } = useReading(store);
  const arrived = useSyncExternalStore(store.subscribeLink, store.hasArrived);
  const status = useSyncExternalStore(store.subscribeLink, store.status);
  const doors = useDoors(details);
  useStateAsked(store, details);
  const name = `${draft.facts.maker} ${draft.facts.model}`.trim() || DRAFT_SCREEN_WORDS.unnamed;
  const about = (
    <>
      {DRAFT_SCREEN_WORDS.from(details.base)} ·{' '}
      <TextLink href={libraryPath(details.crewId)}>{LIBRARY_WORDS.of(details.crewName)}</TextLink>
    </>
  );
  const aside = (
    <>
      <PeopleHere store={store} />
      <SaveState state={status.state} detail={status.detail === '' ? undefined : status.detail} />
    </>
  );
  return (
    <DraftFrame name={name} about={about} aside={aside}>
      <ReadOnlyLine details={details} />
      {arrived ? <DraftScreen store={store} doors={doors} /> : <p className="text-soft">{KIT_WORDS.loading}</p>}
    </DraftFrame>
  );
}

/** Why nothing can be written here, said once. */
function ReadOnlyLine({ details }: { readonly details: DraftDetails }) {
  if (details.state === 'open') {
    return details.role === 'reader' ? <p className="pb-3 text-soft">{DRAFT_SCREEN_WORDS.reader}</p> : null;
  }
  const { crewId, typeId, state } = details;
  const href = state === 'published' && typeId !== null ? typePath(crewId, typeId) : libraryPath(crewId);
  return (
    <div className="pb-3">
      <Message severity="note" said={{ what: DRAFT_SCREEN_WORDS[state] }}>
        <TextLink href={href}>
          {state === 'published' ? DRAFT_SCREEN_WORDS.toType : DRAFT_SCREEN_WORDS.toLibrary}
        </TextLink>
      </Message>
    </div>
  );
}

/** When the right to write changes, the draft may have been published or dropped by somebody else: asks what it is now. */
function useStateAsked(store: DraftStore, { id }: DraftDetails): void {
  const trpc = useTRPC();
  const client = useQueryClient();
  const writable = useSyncExternalStore(store.subscribeLink, store.canEdit);
  useEffect(() => {
    if (!writable) void client.invalidateQueries(trpc.library.draft.queryFilter({ draftId: id }));
  }, [writable, client, trpc, id]);
}

function useDoors({ id, crewId }: DraftDetails): Doors {
  const trpc = useTRPC();
  const router = useRouter();
  const publish = useMutation(
    trpc.library.publishDraft.mutationOptions({
      onSuccess: (answer) => {
        if (answer.outcome !== 'stopped') router.push(typePath(crewId, answer.type.id));
      },
    }),
  );
  const drop = useMutation(
    trpc.library.dropDraft.mutationOptions({ onSuccess: () => router.push(libraryPath(crewId)) }),
  );
  const stopped = publish.data?.outcome === 'stopped' ? PUBLISH_WORDS.stopped : undefined;
  return {
    publish: {
      ask: (note) => publish.mutate({ draftId: id, note }),
      busy: publish.isPending || (publish.isSuccess && stopped === undefined),
      refused: publish.error === null ? stopped : saidOf(publish.error),
    },
    drop: {
      ask: () => drop.mutate({ draftId: id }),
      busy: drop.isPending || drop.isSuccess,
      refused: drop.error === null ? undefined : saidOf(drop.error),
    },
  };
}
