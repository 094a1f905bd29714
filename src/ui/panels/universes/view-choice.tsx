import { RIBBONS_WORDS as words } from '#words/ribbons.ts';
import { LinkButton } from '../../kit/link-button.tsx';

type UniversesViewName = 'all' | 'slots';

export interface ViewChoiceProps {
  readonly view: UniversesViewName;
  readonly onChoose: (view: UniversesViewName) => void;
}

/** All universes as ribbons, or one slot by slot. */
export function ViewChoice({ view, onChoose }: ViewChoiceProps) {
  return (
    <div role="toolbar" aria-label={words.views} className="flex gap-x-3.5">
      {(['all', 'slots'] as const).map((name) => (
        <LinkButton
          key={name}
          aria-pressed={view === name}
          className="aria-pressed:font-semibold aria-pressed:no-underline"
          onClick={() => onChoose(name)}
        >
          {words[name]}
        </LinkButton>
      ))}
    </div>
  );
}
