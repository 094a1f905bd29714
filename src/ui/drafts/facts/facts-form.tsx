import type { FactField } from '#engine/draft/draft.ts';
import { HAZARD_KINDS, LASER_CLASSES, NO_HAZARDS } from '#engine/model/fixture-type.ts';
import { FACTS_WORDS } from '#words/draft-screen.ts';
import { draftTroubleSentence, FACT_NAMES } from '#words/drafts.ts';
import { CAUTION_FOOT, hazardCautions } from '#words/fixture-types.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { Mark } from '../../kit/mark.tsx';
import { Select } from '../../kit/select.tsx';
import { carryOut } from '../chart/chart-actions.ts';
import type { Desk } from '../desk.ts';
import { DraftField } from '../draft-field.tsx';
import { useReading, useWritable } from '../use-desk.ts';
import { suggestedHazards } from './suggested-hazards.ts';

const GRID = 'grid grid-cols-[repeat(auto-fill,minmax(9.75rem,1fr))] gap-x-4 gap-y-2';
const TEXTS = ['weight', 'power', 'powerFactor', 'voltage', 'connector', 'onLoss'] as const;

/** What the manual says of the whole unit: its name always before one, the rest a press away. */
export function FactsForm({ desk }: { readonly desk: Desk }) {
  return (
    <section aria-label={FACTS_WORDS.title} className="flex flex-col gap-2">
      <div className={GRID}>
        <Fact desk={desk} field="maker" />
        <Fact desk={desk} field="model" />
        <Fact desk={desk} field="shortName" />
      </div>
      <Suggested desk={desk} />
      <details>
        <summary className="flex min-h-control cursor-pointer items-center gap-2 underline decoration-edge underline-offset-[0.2em]">
          {FACTS_WORDS.more}
        </summary>
        <div className="flex flex-col gap-3 pt-1">
          <div className={GRID}>
            {TEXTS.map((field) => (
              <Fact key={field} desk={desk} field={field} />
            ))}
            <Switches desk={desk} />
            <Laser desk={desk} />
          </div>
          <div className="grid gap-x-4 gap-y-2 sm:grid-cols-2">
            <Fact desk={desk} field="perBreaker" lines={3} />
            <Fact desk={desk} field="description" lines={3} />
          </div>
          <Hazards desk={desk} />
        </div>
      </details>
    </section>
  );
}

interface FactProps {
  readonly desk: Desk;
  readonly field: FactField;
  readonly lines?: number;
}

const writeFact = (desk: Desk, field: FactField, value: string) =>
  carryOut(desk, [{ of: 'facts', field, value: value.trim() }]);

function Fact({ desk, field, lines = 1 }: FactProps) {
  const { draft, troubles } = useReading(desk.store);
  const trouble = troubles.find(
    ({ where, kind }) => kind !== 'missing' && where.of === 'facts' && where.field === field,
  );
  return (
    <DraftField
      store={desk.store}
      label={FACT_NAMES[field]}
      hint={FACTS_WORDS.hints[field]}
      error={trouble && draftTroubleSentence(trouble, draft)}
      value={draft.facts[field]}
      lines={lines}
      where={{ fixture: 'facts', field }}
      onWrite={(text) => writeFact(desk, field, text)}
    />
  );
}

const SWITCHES = ['', 'A', 'B'] as const;

function Switches({ desk }: { readonly desk: Desk }) {
  const { draft } = useReading(desk.store);
  const writable = useWritable(desk.store);
  const value = SWITCHES.find((each) => each === draft.facts.switches.trim().toUpperCase()) ?? '';
  const about = FACTS_WORDS.switchesAbout[value];
  return (
    <Select
      label={FACT_NAMES.switches}
      hint={about === '' ? undefined : about}
      choices={SWITCHES.map((each) => ({ value: each, label: FACTS_WORDS.switches[each] }))}
      value={value}
      disabled={!writable}
      onChoose={(next) => writeFact(desk, 'switches', next)}
    />
  );
}

const LASERS = ['', ...LASER_CLASSES] as const;

function Laser({ desk }: { readonly desk: Desk }) {
  const { type } = useReading(desk.store);
  const writable = useWritable(desk.store);
  const value = type.hazards.laser ?? '';
  return (
    <Select
      label={FACT_NAMES.laser}
      choices={LASERS.map((each) => ({
        value: each,
        label: each === '' ? FACTS_WORDS.noLaser : FACTS_WORDS.laserClass(each),
      }))}
      value={value}
      disabled={!writable}
      onChoose={(next) => writeFact(desk, 'laser', next)}
    />
  );
}

/** Each hazard with its usual caution as soon as it is ticked. */
function Hazards({ desk }: { readonly desk: Desk }) {
  const { type } = useReading(desk.store);
  const writable = useWritable(desk.store);
  const { hazards } = type;
  const laser = hazardCautions({ ...NO_HAZARDS, laser: hazards.laser });
  return (
    <fieldset className="flex flex-col gap-1">
      <legend className="font-medium">{FACTS_WORDS.hazards}</legend>
      {laser.map((caution) => (
        <Caution key={caution} text={caution} />
      ))}
      <div className="grid gap-x-6 sm:grid-cols-2 xl:grid-cols-3">
        {HAZARD_KINDS.map((kind) => (
          <div key={kind}>
            <label className="flex min-h-control items-center gap-2">
              <input
                type="checkbox"
                className="accent-ink"
                checked={hazards[kind]}
                disabled={!writable}
                onChange={(event) => writeFact(desk, kind, event.currentTarget.checked ? 'yes' : '')}
              />
              {FACT_NAMES[kind]}
            </label>
            {hazardCautions({ ...NO_HAZARDS, [kind]: hazards[kind] }).map((caution) => (
              <Caution key={caution} text={caution} />
            ))}
          </div>
        ))}
      </div>
      <p className="max-w-prose text-small text-soft">{CAUTION_FOOT}</p>
    </fieldset>
  );
}

function Caution({ text }: { readonly text: string }) {
  return (
    <p className="flex max-w-prose gap-2 pl-6">
      <Mark severity="caution" />
      <span>{text}</span>
    </p>
  );
}

/** Hazards that the attributes of the charts give away and nobody has ticked. */
function Suggested({ desk }: { readonly desk: Desk }) {
  const { type } = useReading(desk.store);
  const writable = useWritable(desk.store);
  const kinds = suggestedHazards(type);
  if (kinds.length === 0 || !writable) return null;
  return (
    <p className="flex flex-wrap items-baseline gap-x-3">
      <span>
        <Mark severity="caution" /> {FACTS_WORDS.suggested}
      </span>
      {kinds.map((kind) => (
        <LinkButton key={kind} onClick={() => writeFact(desk, kind, 'yes')}>
          {FACTS_WORDS.tick(FACT_NAMES[kind])}
        </LinkButton>
      ))}
    </p>
  );
}
