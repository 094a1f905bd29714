import { useState } from 'react';
import { FIRST_RULES, type LoadRules } from '#engine/supply/load-rules.ts';
import { readLoadRules } from '#engine/supply/read-load-rules.ts';
import { keep, useKept } from '../../../kit/data/kept.ts';

const KEY = 'load-rules';

/** The rules a person chose on this device, and how to choose others. They are nobody else's. */
export function useLoadRules(): readonly [rules: LoadRules, choose: (rules: LoadRules) => void] {
  const kept = useKept(KEY, readLoadRules);
  const [chosen, setChosen] = useState<LoadRules>();
  const choose = (rules: LoadRules) => {
    keep(KEY, rules);
    setChosen(rules);
  };
  return [chosen ?? kept ?? FIRST_RULES, choose];
}
