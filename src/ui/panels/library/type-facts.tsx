import type { FactField } from '#engine/draft/draft.ts';
import { type FixtureType, HAZARD_KINDS } from '#engine/model/fixture-type.ts';
import { typeFacts } from '#engine/type/compare-types.ts';
import { FACT_WORDS, factText, TYPE_WORDS } from '#words/library.ts';
import { Part } from '../part.tsx';

/** Said elsewhere on the page: in its title, below it, and as cautions. */
const ELSEWHERE: ReadonlySet<FactField> = new Set(['maker', 'model', 'description', 'laser', ...HAZARD_KINDS]);

/** Figures that somebody may plan by. */
const FIGURES: ReadonlySet<FactField> = new Set(['weight', 'power', 'powerFactor', 'voltage', 'perBreaker']);

const isElsewhere = (type: FixtureType, fact: FactField) =>
  ELSEWHERE.has(fact) || (fact === 'shortName' && type.shortName === type.model);

/** What the manual states of the whole unit. */
export function TypeFacts({ type }: { readonly type: FixtureType }) {
  const facts = [...typeFacts(type)].filter(([fact, value]) => value !== '' && !isElsewhere(type, fact));
  const figures = facts.some(([fact]) => FIGURES.has(fact));
  return (
    <Part title={TYPE_WORDS.facts}>
      {facts.length === 0 ? <p className="py-2 text-soft">{TYPE_WORDS.noFacts}</p> : null}
      <dl>
        {facts.map(([fact, value]) => (
          <div key={fact} className="flex min-h-row flex-wrap items-center gap-x-4 border-b border-rule px-2">
            <dt className="w-40 text-soft">{FACT_WORDS[fact]}</dt>
            <dd className="[overflow-wrap:anywhere]">{factText(fact, value)}</dd>
          </div>
        ))}
      </dl>
      {figures ? <p className="pt-2 text-soft">{TYPE_WORDS.planning}</p> : null}
    </Part>
  );
}
