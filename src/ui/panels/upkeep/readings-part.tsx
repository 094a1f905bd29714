import { useState } from 'react';
import { compareNatural } from '#engine/model/natural-order.ts';
import { type RigRecord, recordOf } from '#engine/model/record.ts';
import type { Rig } from '#engine/model/rig.ts';
import { readingSteps } from '#engine/upkeep/unit-story.ts';
import { byOn, readingText, UPKEEP_WORDS as words } from '#words/upkeep.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { findUnit } from '../../upkeep/find-unit.ts';
import { nameOfUnit } from '../../upkeep/name-of-unit.ts';
import { ReadingForm } from '../../upkeep/reading-form.tsx';
import { UnitField, unitTrouble } from '../../upkeep/unit-field.tsx';
import { UnitWord } from '../../upkeep/unit-word.tsx';
import { Part } from '../part.tsx';
import type { UpkeepPartProps } from './faults-part.tsx';

/** Units that are drawn before one asks for all. */
const FIRST = 50;

/** Hours and firmware as units showed them, unit by unit, each with the change since the reading before. */
export function ReadingsPart({ scene, onUnit }: UpkeepPartProps) {
  const { store, rig, writable } = scene;
  const [unit, setUnit] = useState('');
  const [all, setAll] = useState(false);
  const record = recordOf(rig.cards);
  const units = unitsRead(rig, record);
  const found = findUnit(rig, unit);
  return (
    <Part anchor="readings" title={words.parts.readings}>
      {writable === 'no' ? null : (
        <div className="grid grid-cols-[1fr_4fr] gap-2 py-3 max-lg:grid-cols-1">
          <div>
            <UnitField rig={rig} value={unit} onText={setUnit} />
          </div>
          <ReadingForm
            store={store}
            unit={found.is === 'one' ? found.fixture.id : undefined}
            noUnit={unitTrouble(rig, unit)}
          />
        </div>
      )}
      {units.length === 0 ? <p>{words.noReadings}</p> : null}
      <ul>
        {(all ? units : units.slice(0, FIRST)).map((card) => (
          <li key={card.unit} className="flex flex-wrap gap-x-4 border-b border-rule py-1.5">
            <UnitWord rig={rig} card={card} onUnit={onUnit} />
            <ul className="min-w-0">
              {readingSteps(record, card.unit).map((step) => (
                <li key={step.reading.id} className="flex flex-wrap gap-x-3 [overflow-wrap:anywhere]">
                  <span>{readingText(step)}</span>
                  <span className="text-soft">{byOn(step.reading.by, step.reading.on)}</span>
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
      {units.length > FIRST && !all ? (
        <LinkButton onClick={() => setAll(true)}>{words.more(units.length)}</LinkButton>
      ) : null}
    </Part>
  );
}

/** A reading of each unit that was read, by the names of the units. */
function unitsRead(rig: Rig, { readings }: RigRecord) {
  const units = new Map(readings.map((reading) => [reading.unit, reading] as const));
  return [...units.values()]
    .map((card) => ({ card, name: nameOfUnit(rig, card) }))
    .sort((a, b) => compareNatural(a.name, b.name))
    .map(({ card }) => card);
}
