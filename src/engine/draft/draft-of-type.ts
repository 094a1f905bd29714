import type { FixtureType } from '../model/fixture-type.ts';
import { cellText } from './cell-text.ts';
import { type DraftEdit, FACT_FIELDS } from './draft.ts';
import { factTexts } from './fact-texts.ts';
import { firmwareText } from './firmware-text.ts';
import { openChart } from './open-chart.ts';

/**
 * The edits that make an empty draft say a type, with all its modes kept. `ids` gives ids nobody has. A mode without a name
 * cannot be kept by its name: it gets a chart at once.
 */
export function draftOfType(type: FixtureType, ids: () => string): readonly DraftEdit[] {
  const texts = factTexts(type);
  const facts = FACT_FIELDS.filter((field) => texts[field] !== '');
  return [
    ...facts.map((field): DraftEdit => ({ of: 'facts', field, value: texts[field] })),
    ...type.modes.flatMap((mode, at) => {
      const id = ids();
      const set = (field: 'name' | 'description' | 'firmware' | 'kept', value: string): DraftEdit[] =>
        value === '' ? [] : [{ of: 'mode', mode: id, field, value }];
      return [
        { of: 'mode', mode: id, field: 'order', value: at + 1 } as const,
        ...set('name', cellText(mode.name)),
        ...set('description', cellText(mode.description)),
        ...set('firmware', firmwareText(mode.firmware)),
        ...set('kept', cellText(mode.name)),
        ...(mode.name === '' ? openChart(id, mode, type, ids).edits : []),
      ];
    }),
  ];
}
