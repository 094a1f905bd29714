import type { DraftTrouble } from '#engine/draft/draft-trouble.ts';
import { stopsPublishing } from '#engine/draft/draft-trouble.ts';
import { DRAFT_SCREEN_WORDS } from '#words/draft-screen.ts';
import { LinkButton } from '../kit/link-button.tsx';
import type { Desk } from './desk.ts';
import { TroubleList } from './trouble-list.tsx';
import { useReading, useWritable } from './use-desk.ts';

export interface TroublesPartProps {
  readonly desk: Desk;
  readonly onGo: (trouble: DraftTrouble) => void;
}

/** Everything that stops publishing, then what only asks for a look. */
export function TroublesPart({ desk, onGo }: TroublesPartProps) {
  const { draft, troubles } = useReading(desk.store);
  const writable = useWritable(desk.store);
  const groups = [
    { title: DRAFT_SCREEN_WORDS.troubles, some: troubles.filter(stopsPublishing) },
    { title: DRAFT_SCREEN_WORDS.warnings, some: troubles.filter((trouble) => !stopsPublishing(trouble)) },
  ].filter(({ some }) => some.length > 0);
  const isReady = !troubles.some(stopsPublishing);
  return (
    <>
      {groups.map(({ title, some }) => (
        <section key={title} aria-label={title}>
          <h2 className="border-b border-ink text-name">{`${title} (${some.length})`}</h2>
          <TroubleList draft={draft} troubles={some} onGo={onGo} />
        </section>
      ))}
      {isReady && writable ? (
        <p>
          {DRAFT_SCREEN_WORDS.ready}{' '}
          <LinkButton onClick={() => desk.set({ window: { kind: 'publish' } })}>
            {DRAFT_SCREEN_WORDS.publishIt}
          </LinkButton>
        </p>
      ) : null}
    </>
  );
}
