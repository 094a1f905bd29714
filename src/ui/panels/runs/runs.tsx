import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { nameKey } from '#engine/model/card.ts';
import { type RunLine, runList, runsOfFinding } from '#engine/network/runs/run-list.ts';
import { addRun } from '#engine/patch/runs/run-plans.ts';
import { RUNS_WORDS as words } from '#words/runs.ts';
import { EMPTY_WORDS } from '#words/sheet.ts';
import { Button } from '../../kit/button.tsx';
import { BareSelect } from '../../kit/select.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { useCalmRig } from '../../live/use-calm-rig.ts';
import { PHONE, useMedia } from '../../workspace/use-media.ts';
import { AskNameDialog } from '../ask-name-dialog.tsx';
import { carryOutSaying, type Said, takeBackStep } from './run-desk.ts';
import { RunList } from './run-list.tsx';
import { RunView } from './run-view.tsx';
import { SaidLine } from './said-line.tsx';
import { worstOf } from './worst-of.ts';

export interface RunsProps {
  readonly store: RigStore;
  readonly rigId: string;
}

/** Every data line of an open rig to choose from, and the chosen one from its beginning to its end. */
export function Runs({ store, rigId }: RunsProps) {
  const rig = useCalmRig(store);
  const findings = useSyncExternalStore(store.subscribe, store.findings);
  const arrived = useSyncExternalStore(store.subscribeLink, store.hasArrived);
  const writable = useSyncExternalStore(store.subscribeLink, store.canEdit);
  const phone = useMedia(PHONE);
  const [wanted, setWanted] = useState('');
  const [asking, setAsking] = useState(false);
  const [said, setSaid] = useState<Said>();
  useEffect(() => () => store.setWhere(null), [store]);
  const runs = useMemo(() => runList(rig), [rig]);
  const ofRuns = useMemo(() => findings.filter((finding) => runsOfFinding(finding).length > 0), [findings]);
  const at = Math.max(
    0,
    runs.findIndex(({ key }) => key === wanted),
  );
  const chosen = runs[at];
  const choices = runs.map((run) => ({ run, worst: worstOf(ofRuns, run) }));
  const add = (name: string) => {
    setSaid(carryOutSaying(store, addRun(store.rig(), name), words.added(name.trim())));
    setWanted(nameKey(name));
    setAsking(false);
  };
  const adding = (
    <Button disabled={!writable} onClick={() => setAsking(true)}>
      {words.add}
    </Button>
  );
  return (
    <div className="flex min-h-0 flex-1 flex-col">
      <div className="flex min-h-0 flex-1 max-sm:flex-col">
        {phone ? (
          <div className="flex flex-wrap gap-2 px-4 pt-2">
            {chosen === undefined ? null : (
              <div className="min-w-0 flex-1">
                <BareSelect
                  name={words.choose}
                  choices={runs.map((run) => ({ value: run.key, label: choiceText(run) }))}
                  value={chosen.key}
                  onChoose={setWanted}
                />
              </div>
            )}
            {adding}
          </div>
        ) : (
          <div className="flex w-72 shrink-0 flex-col border-r border-rule-strong">
            <div className="px-5 py-2">{adding}</div>
            <RunList choices={choices} at={at} onChoose={setWanted} />
          </div>
        )}
        {chosen === undefined ? (
          <p className="max-w-prose px-5 py-4">{arrived ? words.none : EMPTY_WORDS.arriving}</p>
        ) : (
          <RunView
            key={chosen.key}
            store={store}
            rig={rig}
            rigId={rigId}
            chosen={chosen}
            findings={ofRuns}
            writable={writable}
            onRenamed={(name) => setWanted(nameKey(name))}
            onSaid={setSaid}
          />
        )}
      </div>
      <SaidLine store={store} said={said} onUndo={() => setSaid(takeBackStep(store))} />
      {asking ? (
        <AskNameDialog
          title={words.addTitle}
          label={words.nameOfRun}
          hint={words.nameHint}
          submit={words.addDone}
          busy={false}
          refused={undefined}
          onName={add}
          onClose={() => setAsking(false)}
        />
      ) : null}
    </div>
  );
}

const choiceText = ({ name, carried, units }: RunLine) => `${name}: ${words.carries(carried)} · ${words.units(units)}`;
