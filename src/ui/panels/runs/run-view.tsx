import { useRef, useState } from 'react';
import { getRow } from '#base/table.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { Station } from '#engine/network/runs/measured-run.ts';
import { runChain } from '#engine/network/runs/run-chain.ts';
import type { RunLine } from '#engine/network/runs/run-list.ts';
import { moveOnRun, putSplitter, takeOffRun } from '#engine/patch/runs/chain-plans.ts';
import { unitName } from '#words/findings.ts';
import { RUNS_WORDS as words } from '#words/runs.ts';
import { SLOT_CARD_WORDS } from '#words/slots.ts';
import { LINK_CLASSES } from '../../kit/text-link.tsx';
import { chosenUnits } from '../../live/chosen-units.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { FindingLines } from '../../plant/finding-lines.tsx';
import { SlotCard } from '../../universes/slot-card.tsx';
import { Panel } from '../../workspace/panel.tsx';
import { carryOutSaying, type Said, takeBackStep } from './run-desk.ts';
import { RunFacts } from './run-facts.tsx';
import { RunMore } from './run-more.tsx';
import { RunStations } from './run-stations.tsx';
import { RunTools } from './run-tools.tsx';
import { SplitterPart } from './splitter-part.tsx';
import { findingsOfRun } from './worst-of.ts';

export interface RunViewProps {
  readonly store: RigStore;
  readonly rig: Rig;
  readonly rigId: string;
  readonly chosen: RunLine;
  /** Of all runs. */
  readonly findings: readonly Finding[];
  readonly writable: boolean;
  readonly onRenamed: (name: string) => void;
  readonly onSaid: (said: Said) => void;
}

/** One run: where it begins and what is said of it, then what is on it in the order of the line. */
export function RunView({ store, rig, rigId, chosen, findings, writable, onRenamed, onSaid }: RunViewProps) {
  const { name, line } = chosen;
  const [wanted, setWanted] = useState<string>();
  const [open, setOpen] = useState(false);
  const frame = useRef<HTMLDivElement>(null);
  const at = Math.max(
    0,
    line.stations.findIndex(({ link }) => link.id === wanted),
  );
  const here = line.stations[at];
  const go = (station: Station | undefined) => {
    setWanted(station?.link.id);
    if (station?.link.kind !== 'unit') return;
    const { id } = station.link.fixture;
    chosenUnits(store).choose([id]);
    store.setWhere({ fixture: id, field: 'run' });
  };
  const move = (step: 1 | -1) => {
    if (here === undefined) return;
    setWanted(here.link.id);
    const chain = runChain(store.rig(), chosen.key);
    const place = chain.findIndex(({ id }) => id === here.link.id) + 1 + step;
    const plan = moveOnRun(store.rig(), { run: name, id: here.link.id, step });
    onSaid(carryOutSaying(store, plan, words.moved(stationName(here), place, chain.length)));
  };
  const takeOff = () => {
    if (here === undefined) return;
    setWanted((line.stations[at + 1] ?? line.stations[at - 1])?.link.id);
    const { link } = here;
    const plan =
      link.kind === 'unit' ? takeOffRun(store.rig(), [link.fixture.id]) : putSplitter(store.rig(), link.id, '');
    onSaid(carryOutSaying(store, plan, words.takenOff(stationName(here))));
  };
  const close = () => {
    setOpen(false);
    frame.current?.querySelector<HTMLElement>('[role="grid"]')?.focus({ preventScroll: true });
  };
  const undo = () => onSaid(takeBackStep(store));
  const unit: FixtureId | undefined = here?.link.kind === 'unit' ? here.link.fixture.id : undefined;
  return (
    <div ref={frame} className="relative flex min-h-0 min-w-0 flex-1">
      <div className="flex min-w-0 flex-1 flex-col overflow-y-auto">
        <div className="flex flex-wrap items-baseline gap-x-4 px-4 pt-2 sm:px-5">
          <h2 className="text-title max-sm:sr-only">{name}</h2>
          {/* Not a page of ours: the browser asks the server and saves the answer. */}
          <a className={`${LINK_CLASSES} ml-auto max-sm:ml-0`} href={`/api/rigs/${rigId}/sheets/runs.csv`} download>
            {words.csv}
          </a>
        </div>
        <RunFacts store={store} rig={rig} chosen={chosen} writable={writable} onRenamed={onRenamed} onSaid={onSaid} />
        <FindingLines className="px-4 py-1 sm:px-5" rig={rig} findings={findingsOfRun(findings, chosen)} />
        <RunStations
          store={store}
          chosen={chosen}
          findings={findings}
          at={at}
          writable={writable}
          onGo={go}
          onMove={move}
          onTakeOff={takeOff}
          onOpen={() => setOpen(unit !== undefined)}
          onUndo={undo}
        />
        {here?.link.kind === 'splitter' ? (
          <SplitterPart store={store} rig={rig} splitter={here.link.splitter} writable={writable} onSaid={onSaid} />
        ) : null}
        <RunMore store={store} rig={rig} name={name} writable={writable} onSaid={onSaid} />
        <RunTools
          store={store}
          rig={rig}
          chosen={chosen}
          here={here}
          writable={writable}
          onMove={move}
          onTakeOff={takeOff}
          onOpen={() => setOpen(unit !== undefined)}
          onSaid={onSaid}
        />
      </div>
      {open && unit !== undefined && getRow(rig.fixtures, unit) !== undefined ? (
        <Panel title={SLOT_CARD_WORDS.title} onClose={close}>
          <SlotCard store={store} id={unit} steps={null} />
        </Panel>
      ) : null}
    </div>
  );
}

const stationName = ({ link }: Station) =>
  link.kind === 'unit' ? unitName(link.fixture) : words.splitter(link.splitter.name);
