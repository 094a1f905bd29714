import { useMemo, useState, useSyncExternalStore } from 'react';
import { plantOf } from '#engine/model/plant.ts';
import { circuitLoads } from '#engine/supply/circuit-loads.ts';
import { rulesOf } from '#engine/supply/load-rules.ts';
import { positionLoads } from '#engine/supply/position-loads.ts';
import { supplyLoads } from '#engine/supply/supply-loads.ts';
import { CIRCUIT_CAUTIONS, reckonedText } from '#words/loads.ts';
import { EMPTY_WORDS, SHEET_WORDS } from '#words/sheet.ts';
import { SUPPLY_WORDS as words } from '#words/supply.ts';
import { chosenUnits } from '../../live/chosen-units.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { useCalmRig } from '../../live/use-calm-rig.ts';
import { Cautions } from '../../plant/cautions.tsx';
import { Part } from '../part.tsx';
import { AddNamed } from './add-named.tsx';
import { Asked } from './asked.tsx';
import { ChosenBar } from './chosen-bar.tsx';
import { CircuitList } from './circuit-list.tsx';
import { PositionsPart } from './positions-part.tsx';
import type { Question, Scene } from './scene.ts';
import { SetupPart } from './setup-part.tsx';
import { SupplyPart } from './supply-part.tsx';
import { UndoLine } from './undo-line.tsx';

export interface SupplyProps {
  readonly store: RigStore;
  readonly rigId: string;
}

/** Rules, supplies with their circuits, circuits on no supply, and positions, of an open rig. */
export function Supply({ store, rigId }: SupplyProps) {
  const rig = useCalmRig(store);
  const arrived = useSyncExternalStore(store.subscribeLink, store.hasArrived);
  const canEdit = useSyncExternalStore(store.subscribeLink, store.canEdit);
  const choice = chosenUnits(store);
  const ids = useSyncExternalStore(choice.subscribe, choice.ids);
  const chosen = useMemo(() => new Set(ids), [ids]);
  const [question, setQuestion] = useState<Question>();
  const loads = useMemo(() => {
    const circuits = circuitLoads(rig);
    return { circuits, supplies: supplyLoads(rig, circuits), positions: positionLoads(rig) };
  }, [rig]);
  if (!arrived) return <p className="px-5 py-4 text-soft">{EMPTY_WORDS.arriving}</p>;
  const scene: Scene = {
    ...loads,
    store,
    rig,
    rules: rulesOf(plantOf(rig.cards)),
    findings: store.findings(),
    writable: canEdit ? 'yes' : 'no',
    chosen,
    onChoose: (id) => choice.choose(chosen.has(id) ? ids.filter((each) => each !== id) : [...ids, id]),
    onAsk: setQuestion,
  };
  const loose = loads.circuits.filter(({ supply }) => supply === undefined);
  return (
    <div className="flex min-h-0 flex-1 flex-col">
      <div className="flex min-h-0 flex-1 flex-col gap-7 overflow-y-auto px-4 py-4 sm:px-5">
        {canEdit ? null : <p className="text-soft">{SHEET_WORDS.readOnly}</p>}
        <div className="flex flex-col gap-1">
          <Cautions texts={CIRCUIT_CAUTIONS} />
          <p className="max-w-5xl text-soft">{reckonedText(scene.rules)}</p>
          <UndoLine scene={scene} />
        </div>
        <SetupPart scene={scene} />
        <Part title={words.supplies} actions={<AddNamed scene={scene} kind="supply" />}>
          {loads.supplies.length + loads.circuits.length === 0 ? <p className="py-2">{words.none}</p> : null}
          <ul className="flex flex-col gap-6 pt-3">
            {loads.supplies.map((load) => (
              <li key={load.supply.key}>
                <SupplyPart scene={scene} load={load} />
              </li>
            ))}
          </ul>
        </Part>
        <Part title={words.loose} actions={<AddNamed scene={scene} kind="circuit" />}>
          <CircuitList scene={scene} circuits={loose} />
        </Part>
        <PositionsPart scene={scene} />
      </div>
      <ChosenBar scene={scene} rigId={rigId} />
      {question === undefined ? null : (
        <Asked scene={scene} question={question} onClose={() => setQuestion(undefined)} />
      )}
    </div>
  );
}
