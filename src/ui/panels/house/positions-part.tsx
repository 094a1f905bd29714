import { useMemo } from 'react';
import { type HousePosition, housePositions } from '#engine/house/house-positions.ts';
import { addPlace, removePlace } from '#engine/patch/house/house-plans.ts';
import { hangsText, HOUSE_WORDS as words } from '#words/house.ts';
import { POSITION_CAUTIONS } from '#words/loads.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { AddLine } from '../../plant/add-line.tsx';
import { type CardColumn, CardList, type CardScene } from '../../plant/card-list.tsx';
import { Cautions } from '../../plant/cautions.tsx';
import { carryOutPlan } from '../../workspace/carry-out-plan.ts';
import { Part } from '../part.tsx';

const PLACE = { card: 'place', plan: 'set-house' } as const;
const LIMIT = { card: 'limit', plan: 'set-limit' } as const;
const COLUMNS: readonly CardColumn[] = [
  { ...PLACE, field: 'first', label: words.place.first, share: 2 },
  { ...PLACE, field: 'trim', label: words.place.trim, share: 1 },
  { ...LIMIT, field: 'kilograms', label: words.place.kilograms, share: 1, placeholder: words.notStated },
  { ...LIMIT, field: 'person', label: words.place.person, share: 2 },
  { ...LIMIT, field: 'on', label: words.place.on, share: 1.5 },
  { ...PLACE, field: 'notes', label: words.place.notes, share: 3 },
];

/** Positions in their order: how their numbers run, how high they hang, and what they may hold by whose word. */
export function PositionsPart({ scene }: { readonly scene: CardScene }) {
  const { store, rig, writable } = scene;
  const positions = useMemo(() => housePositions(rig), [rig]);
  const remove = ({ key, name, place, order }: HousePosition) =>
    writable === 'no' || (place === undefined && order === null) ? null : (
      <LinkButton aria-label={words.remove(name)} onClick={() => carryOutPlan(store, removePlace(store.rig(), key))}>
        {words.removeWord}
      </LinkButton>
    );
  return (
    <Part anchor="positions" title={words.parts.positions}>
      <div className="pt-2">
        <Cautions texts={POSITION_CAUTIONS} />
      </div>
      {positions.length === 0 ? <p className="pt-2">{words.noPositions}</p> : null}
      <CardList
        scene={scene}
        name={words.parts.positions}
        head={words.position}
        columns={COLUMNS}
        lines={positions.map((position) => ({
          of: position.key,
          name: position.name,
          lead: <Lead position={position} />,
          begins: { position: position.name },
          acts: remove(position),
        }))}
      />
      <AddLine scene={scene} what="position" planOf={(name) => addPlace(store.rig(), name)} />
    </Part>
  );
}

function Lead({ position }: { readonly position: HousePosition }) {
  return (
    <>
      <p className="font-medium">{position.name}</p>
      <p className="text-small text-soft">{hangsText(position)}</p>
    </>
  );
}
