import type { TypeUse } from '#wire/library.ts';
import { lookedSentence, TYPE_WORDS } from '#words/library.ts';
import { TextLink } from '../../kit/text-link.tsx';
import { Part } from '../part.tsx';
import { Asked } from './asked.tsx';
import { useUses } from './use-library.ts';

export interface UsesPartProps {
  readonly crewId: string;
  readonly typeId: string;
}

/** Which rigs use a type: in which modes, how many units, and of which revision. */
export function UsesPart(address: UsesPartProps) {
  const answer = useUses(address);
  return (
    <Part title={TYPE_WORDS.usedIn}>
      <Asked answer={answer}>
        {(found) => (
          <>
            <ul>
              {found.uses.map((use) => (
                <RigUse key={use.rigId} use={use} />
              ))}
            </ul>
            <p className="pt-2 text-soft">{lookedSentence(found)}</p>
          </>
        )}
      </Asked>
    </Part>
  );
}

function RigUse({ use }: { readonly use: TypeUse }) {
  return (
    <li className="flex min-h-row flex-wrap items-baseline gap-x-4 border-b border-rule px-2 py-0.5">
      <TextLink href={`/rigs/${use.rigId}`} className="font-serif text-large">
        {use.rigName}
      </TextLink>
      {use.modes.map(({ mode, units, number, hash }) => (
        <span key={`${mode} ${hash}`}>
          {TYPE_WORDS.unitsIn(mode, units)} <span className="text-soft">{TYPE_WORDS.pinnedRevision(number)}</span>
        </span>
      ))}
    </li>
  );
}
