import { CONTINUOUS_SHARE, type LoadRules, NOMINAL_VOLTAGES } from '#engine/supply/load-rules.ts';
import { LOADS_WORDS as words } from '#words/loads.ts';
import { Select } from '../../../kit/select.tsx';

export interface LoadRulesPartProps {
  readonly rules: LoadRules;
  readonly onChoose: (rules: LoadRules) => void;
}

const VOLTAGES = NOMINAL_VOLTAGES.map((volts) => ({ value: String(volts), label: words.voltsChoice(volts) }));
const SHARES = [
  { value: 'all', label: words.shares.all },
  { value: 'most', label: words.shares.most },
] as const;

/** By which rules the loads are reckoned: chosen by a person, never guessed from where they are. */
export function LoadRulesPart({ rules, onChoose }: LoadRulesPartProps) {
  return (
    <section aria-label={words.rules} className="flex flex-col gap-2">
      <div className="grid grid-cols-2 items-end gap-3 max-sm:grid-cols-1">
        <Select
          label={words.volts}
          choices={VOLTAGES}
          value={String(rules.volts)}
          onChoose={(volts) => onChoose({ ...rules, volts: Number(volts) })}
        />
        <Select
          label={words.share}
          choices={SHARES}
          value={rules.share === null ? 'all' : 'most'}
          onChoose={(share) => onChoose({ ...rules, share: share === 'all' ? null : CONTINUOUS_SHARE })}
        />
      </div>
      <p className="text-small text-soft">{words.kept}</p>
    </section>
  );
}
