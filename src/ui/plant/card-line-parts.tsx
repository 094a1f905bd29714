import { randomId } from '#base/random-id.ts';
import { addLine, HOUSE_PLAN, type LineKind, removeLine } from '#engine/patch/house/house-plans.ts';
import { HOUSE_WORDS as words } from '#words/house.ts';
import { LinkButton } from '../kit/link-button.tsx';
import { carryOutPlan } from '../workspace/carry-out-plan.ts';
import { AddLine } from './add-line.tsx';
import { CardCell } from './card-cell.tsx';
import type { CardScene } from './card-list.tsx';

interface OfLineProps {
  readonly scene: CardScene;
  readonly kind: LineKind;
  /** Its key. */
  readonly of: string;
  readonly name: string;
}

interface NamedProps extends OfLineProps {
  readonly field: 'type' | 'name' | 'item';
  readonly label: string;
}

/** What a line of the record is: a cell like the others, but first. */
export function Named({ scene: { store, rig, writable }, kind, field, of, name, label }: NamedProps) {
  return (
    <CardCell
      store={store}
      rig={rig}
      plan={HOUSE_PLAN[kind]}
      card={kind}
      of={of}
      field={field}
      name={words.cellOf(label, name)}
      disabled={writable === 'no'}
    />
  );
}

/** Takes a line away; undo brings it back. */
export function Remove({ scene: { store, writable }, kind, of, name }: OfLineProps) {
  if (writable === 'no') return null;
  return (
    <LinkButton aria-label={words.remove(name)} onClick={() => carryOutPlan(store, removeLine(store.rig(), kind, of))}>
      {words.removeWord}
    </LinkButton>
  );
}

/** One line to type, read as what its kind has. */
export function AddKind({ scene, kind }: { readonly scene: CardScene; readonly kind: LineKind }) {
  return <AddLine scene={scene} what={kind} planOf={(line) => addLine(scene.store.rig(), kind, line, randomId())} />;
}
