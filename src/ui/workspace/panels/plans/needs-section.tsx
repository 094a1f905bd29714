import type { FixtureId } from '#engine/model/ids.ts';
import { NEEDS_WORDS } from '#words/needs.ts';
import type { Sheet } from '../../../grid/sheet.ts';
import { useCalmRig } from '../../../live/use-calm-rig.ts';
import { ModeNeeds } from './mode-needs.tsx';
import { MoreNeeds } from './more-needs.tsx';

export interface NeedsSectionProps {
  readonly sheet: Sheet;
  readonly rows: readonly FixtureId[];
}

/** What a change that is only thought of would need: more units, or another mode of the selected ones. */
export function NeedsSection({ sheet, rows }: NeedsSectionProps) {
  const rig = useCalmRig(sheet.store);
  return (
    <section className="flex flex-col gap-3 border-t border-rule-strong pt-3">
      <h3>{NEEDS_WORDS.title}</h3>
      <p className="text-soft">{NEEDS_WORDS.about}</p>
      <MoreNeeds store={sheet.store} rig={rig} />
      <ModeNeeds store={sheet.store} rig={rig} rows={rows} />
    </section>
  );
}
