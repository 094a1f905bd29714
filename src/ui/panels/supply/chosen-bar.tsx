import { useId, useState } from 'react';
import { getRow } from '#base/table.ts';
import { plantOf } from '#engine/model/plant.ts';
import { feedPlan } from '#engine/supply/feed-plans.ts';
import { SUPPLY_WORDS as words } from '#words/supply.ts';
import { Button } from '../../kit/button.tsx';
import { CONTROL_CLASSES } from '../../kit/field-frame.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import { StayLink } from '../../kit/stay-link.tsx';
import { LINK_CLASSES } from '../../kit/text-link.tsx';
import { chosenUnits } from '../../live/chosen-units.ts';
import { rigPath } from '../rig/rig-address.ts';
import { carryOut, type Scene } from './scene.ts';

export interface ChosenBarProps {
  readonly scene: Scene;
  readonly rigId: string;
}

/** The chosen units, at the foot of the page: onto another circuit, to the sheet, or not chosen any more. */
export function ChosenBar({ scene, rigId }: ChosenBarProps) {
  const list = useId();
  const [circuit, setCircuit] = useState('');
  const [told, setTold] = useState<string>();
  const ids = [...scene.chosen].filter((id) => getRow(scene.rig.fixtures, id) !== undefined);
  if (ids.length === 0) return null;
  const put = (to: string) => {
    const why = carryOut(scene, feedPlan(scene.store.rig(), ids, to));
    setTold(why);
    if (why === undefined) setCircuit('');
  };
  return (
    <section
      aria-label={words.chosenName}
      className="flex flex-wrap items-center gap-x-4 gap-y-2 border-t border-rule-strong bg-selected px-4 py-2 sm:px-5"
    >
      <p className="font-medium">{words.chosen(ids.length)}</p>
      {scene.writable === 'no' ? null : (
        <form
          className="flex flex-wrap items-center gap-2"
          onSubmit={(event) => {
            event.preventDefault();
            if (circuit.trim() !== '') put(circuit);
          }}
        >
          <datalist id={list}>
            {[...plantOf(scene.rig.cards).circuits.values()].map(({ key, name }) => (
              <option key={key} value={name} />
            ))}
          </datalist>
          <input
            className={`${CONTROL_CLASSES} w-48!`}
            aria-label={words.putOn}
            placeholder={words.putOn}
            list={list}
            value={circuit}
            onChange={(event) => setCircuit(event.currentTarget.value)}
          />
          <Button type="submit" disabled={circuit.trim() === ''}>
            {words.put}
          </Button>
          <LinkButton onClick={() => put('')}>{words.takeOff}</LinkButton>
        </form>
      )}
      <StayLink className={LINK_CLASSES} href={rigPath(rigId, 'sheet')}>
        {words.toSheet}
      </StayLink>
      <LinkButton onClick={() => chosenUnits(scene.store).choose([])}>{words.clear}</LinkButton>
      <p role="status" className="w-full empty:hidden">
        {told}
      </p>
    </section>
  );
}
