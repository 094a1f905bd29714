import type { OpenDraftSummary } from '#wire/library.ts';
import { TYPE_WORDS } from '#words/library.ts';
import { sayMoment } from '#words/screens.ts';
import { TextLink } from '../../kit/text-link.tsx';
import { Part } from '../part.tsx';
import { draftPath } from './library-address.ts';

export interface DraftsPartProps {
  readonly crewId: string;
  readonly drafts: readonly OpenDraftSummary[];
}

/** The changes of a type that somebody has begun and not published; nothing when there are none. */
export function DraftsPart({ crewId, drafts }: DraftsPartProps) {
  if (drafts.length === 0) return null;
  return (
    <Part title={TYPE_WORDS.drafts}>
      <ul>
        {drafts.map((draft) => (
          <li key={draft.id} className="flex min-h-row flex-wrap items-center gap-x-4 border-b border-rule px-2">
            <span>{TYPE_WORDS.draft(draft.by, sayMoment(draft.at), draft.base)}</span>
            <TextLink href={draftPath(crewId, draft.id)}>{TYPE_WORDS.openDraft}</TextLink>
          </li>
        ))}
      </ul>
    </Part>
  );
}
