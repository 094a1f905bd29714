import type { Fixture } from '#engine/model/fixture.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { unitName } from '#words/findings.ts';
import { LOADS_WORDS } from '#words/loads.ts';
import { LinkButton } from '../../../kit/link-button.tsx';
import { Mark } from '../../../kit/mark.tsx';

export interface UnitLinksProps {
  /** What is the matter with these units. */
  readonly text: string;
  readonly units: readonly Fixture[];
  readonly onGo: (fixture: FixtureId) => void;
}

/** Units named after what is the matter with them; the rest stand in the sheet. */
const MOST = 24;

/** Units that a figure is without, each the way to its row; nothing without units. */
export function UnitLinks({ text, units, onGo }: UnitLinksProps) {
  if (units.length === 0) return null;
  return (
    <div>
      <p>
        <Mark severity="caution" /> {text}
      </p>
      <ul className="flex flex-wrap gap-x-4 pl-4">
        {units.slice(0, MOST).map((unit) => (
          <li key={unit.id}>
            <LinkButton onClick={() => onGo(unit.id)}>{unitName(unit)}</LinkButton>
          </li>
        ))}
        {units.length > MOST ? <li className="text-soft">{LOADS_WORDS.more(units.length - MOST)}</li> : null}
      </ul>
    </div>
  );
}
