import { getRow } from '#base/table.ts';
import { cardId, nameKey } from '#engine/model/card.ts';
import { setCard } from '#engine/model/card-edits.ts';
import { CARD_SCREEN_WORDS } from '#words/cards.ts';
import { SUPPLY_WORDS as words } from '#words/supply.ts';
import { BareSelect } from '../../kit/select.tsx';
import type { Scene } from './scene.ts';

export interface SupplyChoiceProps {
  readonly scene: Scene;
  /** The key of the circuit. */
  readonly of: string;
  readonly name: string;
}

/** Which supply a circuit is on: one of those there are, or the one it names that is gone. */
export function SupplyChoice({ scene, of, name }: SupplyChoiceProps) {
  const named = String(getRow(scene.rig.cards, cardId('circuit', of))?.cells.supply ?? '');
  const known = scene.supplies.map(({ supply }) => ({ value: supply.key, label: supply.name }));
  const key = nameKey(named);
  const gone = key === '' || known.some(({ value }) => value === key) ? [] : [{ value: key, label: named }];
  return (
    <BareSelect
      name={words.cellOf(words.cells.supply, name)}
      disabled={scene.writable === 'no'}
      choices={[{ value: '', label: CARD_SCREEN_WORDS.notSaid }, ...known, ...gone]}
      value={key}
      onChoose={(value) => {
        const supply = known.find((each) => each.value === value)?.label ?? (value === '' ? null : named);
        scene.store.apply({ name: 'set-supply', edits: setCard('circuit', of, { supply }) });
      }}
    />
  );
}
