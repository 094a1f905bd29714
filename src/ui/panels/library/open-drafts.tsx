import { draftName, LIBRARY_WORDS } from '#words/library.ts';
import { sayMoment } from '#words/screens.ts';
import { TextLink } from '../../kit/text-link.tsx';
import { Part } from '../part.tsx';
import { draftPath } from './library-address.ts';
import { useDrafts } from './use-library.ts';

/** What the crew is writing and has not published; nothing when there is none, or nobody could be asked. */
export function OpenDrafts({ crewId }: { readonly crewId: string }) {
  const drafts = useDrafts(crewId).value ?? [];
  if (drafts.length === 0) return null;
  return (
    <Part title={LIBRARY_WORDS.drafts}>
      <ul>
        {drafts.map((draft) => (
          <li key={draft.id} className="flex min-h-row flex-wrap items-center gap-x-4 border-b border-rule px-2">
            <TextLink href={draftPath(crewId, draft.id)} className="font-serif text-large">
              {draftName(draft)}
            </TextLink>
            <span className="text-soft">{LIBRARY_WORDS.begun(draft.by, sayMoment(draft.at))}</span>
          </li>
        ))}
      </ul>
    </Part>
  );
}
