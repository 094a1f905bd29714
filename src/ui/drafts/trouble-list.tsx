import type { Draft } from '#engine/draft/draft.ts';
import { type DraftTrouble, stopsPublishing } from '#engine/draft/draft-trouble.ts';
import { PUBLISH_WORDS } from '#words/draft-screen.ts';
import { draftTroubleSentence } from '#words/drafts.ts';
import { LinkButton } from '../kit/link-button.tsx';
import { Mark } from '../kit/mark.tsx';

export interface TroubleListProps {
  readonly draft: Draft;
  readonly troubles: readonly DraftTrouble[];
  /** Goes to where a trouble stands. */
  readonly onGo: (trouble: DraftTrouble) => void;
}

/** Troubles in full, each with the way to its cell. */
export function TroubleList({ draft, troubles, onGo }: TroubleListProps) {
  return (
    <ul>
      {troubles.map((trouble) => (
        <li key={JSON.stringify(trouble)} className="flex items-baseline gap-1.5 py-0.5">
          <Mark severity={stopsPublishing(trouble) ? 'blocker' : 'caution'} />
          <span>
            {draftTroubleSentence(trouble, draft)}{' '}
            {trouble.where.of === 'type' ? null : (
              <LinkButton onClick={() => onGo(trouble)}>{PUBLISH_WORDS.show}</LinkButton>
            )}
          </span>
        </li>
      ))}
    </ul>
  );
}
