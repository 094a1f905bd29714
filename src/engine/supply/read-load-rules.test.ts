import { expect, it } from 'vitest';
import { CONTINUOUS_SHARE, FIRST_RULES } from './load-rules.ts';
import { readLoadRules } from './read-load-rules.ts';

it('reads what was kept, and nothing that nobody could have chosen', () => {
  for (const rules of [FIRST_RULES, { volts: 120, share: CONTINUOUS_SHARE }]) {
    expect(readLoadRules(JSON.parse(JSON.stringify(rules)))).toEqual(rules);
  }
  for (const kept of [
    null,
    7,
    {},
    { volts: 0, share: null },
    { volts: 230, share: 0 },
    { volts: '230', share: null },
  ]) {
    expect(readLoadRules(kept)).toBeUndefined();
  }
});
