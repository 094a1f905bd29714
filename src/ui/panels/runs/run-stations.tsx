import { type KeyboardEvent, useId } from 'react';
import type { Finding } from '#engine/model/finding.ts';
import type { Station } from '#engine/network/runs/measured-run.ts';
import type { RunLine } from '#engine/network/runs/run-list.ts';
import { RUNS_WORDS as words } from '#words/runs.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { lineOfKey } from '../universes/line-of-key.ts';
import { STATION_COLUMNS, StationRow } from './station-row.tsx';

export interface RunStationsProps {
  readonly store: RigStore;
  readonly chosen: RunLine;
  readonly findings: readonly Finding[];
  readonly at: number;
  readonly writable: boolean;
  readonly onGo: (station: Station | undefined) => void;
  readonly onMove: (step: 1 | -1) => void;
  readonly onTakeOff: () => void;
  readonly onOpen: () => void;
  readonly onUndo: () => void;
}

/** Units and splitters along a run. One stop of Tab: arrows choose, with Alt they move; the metres of the chosen one are the next stop. */
export function RunStations(props: RunStationsProps) {
  const { store, chosen, findings, at, writable, onGo, onMove, onTakeOff, onOpen, onUndo } = props;
  const { stations } = chosen.line;
  const id = useId();
  const act: Readonly<Record<string, (() => void) | undefined>> = {
    'Alt+ArrowUp': () => onMove(-1),
    'Alt+ArrowDown': () => onMove(1),
    Delete: onTakeOff,
    Backspace: onTakeOff,
    Enter: onOpen,
    ' ': onOpen,
    'Ctrl+z': onUndo,
  };
  const press = (event: KeyboardEvent) => {
    if (event.target !== event.currentTarget) return;
    const does = act[`${event.altKey ? 'Alt+' : ''}${event.ctrlKey || event.metaKey ? 'Ctrl+' : ''}${event.key}`];
    const line =
      event.altKey || event.ctrlKey ? undefined : lineOfKey(event.key, { at, count: stations.length, page: 10 });
    if (does === undefined && line === undefined) return;
    event.preventDefault();
    does?.();
    if (line === undefined) return;
    onGo(stations[line]);
    document.getElementById(`${id}-${line}`)?.scrollIntoView({ block: 'nearest' });
  };
  if (stations.length === 0) return <p className="px-4 py-2 text-soft sm:px-5">{words.empty}</p>;
  return (
    <div
      role="grid"
      tabIndex={0}
      aria-label={words.line(chosen.name)}
      aria-activedescendant={`${id}-${at}`}
      className="shrink-0 border-t border-ink bg-sheet focus-visible:-outline-offset-2"
      onKeyDown={press}
    >
      <div
        role="row"
        className={`${STATION_COLUMNS} border-b border-rule-strong px-4 py-1 text-soft sm:px-5 max-sm:sr-only`}
      >
        {Object.entries(words.columns).map(([column, heading]) => (
          <span key={column} role="columnheader" className={NUMBERS.has(column) ? 'text-right' : ''}>
            {heading}
          </span>
        ))}
      </div>
      {stations.map((station, index) => (
        <StationRow
          key={station.link.id}
          id={`${id}-${index}`}
          store={store}
          chosen={chosen}
          station={station}
          findings={findings}
          look={index === at ? 'here' : 'plain'}
          writable={writable}
          onGo={onGo}
        />
      ))}
    </div>
  );
}

const NUMBERS: ReadonlySet<string> = new Set(['place', 'cable', 'metres', 'loads']);
