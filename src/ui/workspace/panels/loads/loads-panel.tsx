import { useMemo, useState } from 'react';
import { getRow } from '#base/table.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { foldName } from '#engine/model/ids.ts';
import { plantOf } from '#engine/model/plant.ts';
import type { Rig } from '#engine/model/rig.ts';
import { circuitLoads } from '#engine/supply/circuit-loads.ts';
import { feedPlan } from '#engine/supply/feed-plans.ts';
import { rulesOf } from '#engine/supply/load-rules.ts';
import { positionLoads } from '#engine/supply/position-loads.ts';
import { CIRCUIT_CAUTIONS, POSITION_CAUTIONS, reckonedText, LOADS_WORDS as words } from '#words/loads.ts';
import { positionText } from '#words/supply.ts';
import type { Sheet } from '../../../grid/sheet.ts';
import { selectedBlock } from '../../../grid/sheet-actions.ts';
import { showPlan } from '../../../grid/show-plan.ts';
import { useSheet } from '../../../grid/use-sheet.ts';
import { Button } from '../../../kit/button.tsx';
import { StayLink } from '../../../kit/stay-link.tsx';
import { TextField } from '../../../kit/text-field.tsx';
import { LINK_CLASSES } from '../../../kit/text-link.tsx';
import { useCalmRig } from '../../../live/use-calm-rig.ts';
import { rigAddress, rigPath } from '../../../panels/rig/rig-address.ts';
import { Cautions } from '../../../plant/cautions.tsx';
import { CircuitBar } from '../../../plant/circuit-bar.tsx';
import { PositionBar } from '../../../plant/position-bar.tsx';
import { Panel } from '../../panel.tsx';

export interface LoadsPanelProps {
  readonly sheet: Sheet;
  readonly onClose: () => void;
}

/** Bars the panel shows; the page of the supply has all. */
const MOST = 12;

/** What feeds the selected units, what else hangs where they do, and the way to another circuit for them. */
export function LoadsPanel({ sheet, onClose }: LoadsPanelProps) {
  useSheet(sheet, (state) => state.selection);
  const rig = useCalmRig(sheet.store);
  const { rows } = selectedBlock(sheet);
  const [circuit, setCircuit] = useState('');
  const rules = rulesOf(plantOf(rig.cards));
  const { rigId } = rigAddress(window.location.pathname);
  return (
    <Panel title={words.title} about={words.about(rows.length)} onClose={onClose}>
      <StayLink className={LINK_CLASSES} href={rigPath(rigId, 'supply')}>
        {words.toPage}
      </StayLink>
      <p className="text-soft">{reckonedText(rules)}</p>
      <Bars rig={rig} rows={rows} />
      <form
        className="flex flex-col gap-2 border-t border-rule-strong pt-3"
        onSubmit={(event) => {
          event.preventDefault();
          showPlan(sheet, feedPlan(sheet.store.rig(), rows, circuit));
        }}
      >
        <TextField label={words.circuit} value={circuit} onText={setCircuit} />
        <div>
          <Button type="submit">{words.put}</Button>
        </div>
      </form>
    </Panel>
  );
}

function Bars({ rig, rows }: { readonly rig: Rig; readonly rows: readonly FixtureId[] }) {
  const rules = rulesOf(plantOf(rig.cards));
  const circuits = useMemo(() => circuitLoads(rig), [rig]);
  const positions = useMemo(() => positionLoads(rig), [rig]);
  const fixtures = rows.flatMap((id) => getRow(rig.fixtures, id) ?? []);
  if (fixtures.length === 0) return <p>{words.none}</p>;
  const feeds = new Set(fixtures.map((fixture) => foldName(fixture.circuit)));
  const places = new Set(fixtures.map((fixture) => foldName(fixture.position)));
  const fed = circuits.filter(({ key }) => feeds.has(key));
  const hung = positions.filter(({ key }) => places.has(key));
  return (
    <>
      <section aria-label={words.circuits} className="flex flex-col gap-2">
        <h3>{words.circuits}</h3>
        <Cautions texts={CIRCUIT_CAUTIONS} />
        {fed.slice(0, MOST).map((load) => (
          <CircuitBar
            key={load.key}
            load={load}
            rules={rules}
            name={load.key === '' ? words.noCircuit : load.circuit}
            scale={Math.max(...circuits.map(({ amps }) => amps))}
          />
        ))}
        {fed.length > MOST ? <p className="text-soft">{words.more(fed.length - MOST)}</p> : null}
      </section>
      <section aria-label={words.positions} className="flex flex-col gap-2">
        <h3>{words.positions}</h3>
        <Cautions texts={POSITION_CAUTIONS} />
        {hung.slice(0, MOST).map((load) => (
          <div key={load.key}>
            <PositionBar
              load={load}
              name={load.key === '' ? words.noPosition : load.position}
              scale={Math.max(...positions.map(({ kilograms }) => kilograms))}
            />
            <p className="text-soft">{positionText(load)}</p>
          </div>
        ))}
        {hung.length > MOST ? <p className="text-soft">{words.more(hung.length - MOST)}</p> : null}
      </section>
    </>
  );
}
