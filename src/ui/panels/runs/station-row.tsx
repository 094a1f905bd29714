import { formatAddress } from '#engine/address/notation.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { Station } from '#engine/network/runs/measured-run.ts';
import type { RunLine } from '#engine/network/runs/run-list.ts';
import { unitName } from '#words/findings.ts';
import { whatIs, RUNS_WORDS as words } from '#words/runs.ts';
import { Mark } from '../../kit/mark.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { StationCable } from './station-cable.tsx';

/** Place, unit, type, address, metres, total, loads; on a phone in two lines. */
export const STATION_COLUMNS =
  'grid grid-cols-[3rem_minmax(7rem,1fr)_minmax(7rem,1.4fr)_7rem_5.5rem_5.5rem_3.5rem] items-center gap-x-3 max-sm:grid-cols-[1.75rem_1fr_4.5rem_4.5rem]';

export interface StationRowProps {
  readonly id: string;
  readonly store: RigStore;
  readonly chosen: RunLine;
  readonly station: Station;
  readonly findings: readonly Finding[];
  readonly look: 'here' | 'plain';
  readonly writable: boolean;
  readonly onGo: (station: Station) => void;
}

/** One unit or splitter of a run: what it is, the cable to it, and what has come together up to it. */
export function StationRow(props: StationRowProps) {
  const { id, store, chosen, station, findings, look, writable, onGo } = props;
  const { link, place, cable, metres, unknown, loads } = station;
  const name = link.kind === 'unit' ? unitName(link.fixture) : words.splitter(link.splitter.name);
  const worst = findings.find(({ fixtures }) => fixtures.some((fixture) => fixture === link.id))?.severity;
  const address =
    link.kind === 'unit'
      ? link.fixture.addresses.flatMap((start) => (start === null ? [] : [formatAddress(start)])).join(' + ')
      : '';
  return (
    // Its keys are those of the grid it is in.
    <div
      id={id}
      role="row"
      tabIndex={-1}
      aria-selected={look === 'here'}
      className={`${STATION_COLUMNS} min-h-row border-b border-rule px-4 py-0.5 outline-none hover:bg-hover aria-selected:bg-selected sm:px-5 touch:min-h-11 max-sm:py-1.5`}
      onPointerDown={() => onGo(station)}
    >
      <span role="gridcell" className="text-right tabular-nums text-soft max-sm:row-span-2 max-sm:self-start">
        {place}
      </span>
      <span role="gridcell" className="flex min-w-0 items-baseline gap-2 font-medium">
        <span className="truncate">{name}</span>
        {worst === undefined ? null : <Mark severity={worst} />}
      </span>
      <span role="gridcell" className="truncate text-soft max-sm:col-start-2 max-sm:row-start-2">
        {link.kind === 'unit' ? whatIs(link.fixture) : words.outputsWords(link.splitter.outputs)}
      </span>
      <span
        role="gridcell"
        className="truncate font-mono max-sm:col-span-2 max-sm:col-start-3 max-sm:row-start-1 max-sm:text-right max-sm:text-large max-sm:font-semibold"
      >
        {address}
      </span>
      <span role="gridcell" className="text-right tabular-nums max-sm:col-start-3 max-sm:row-start-2">
        {look === 'here' && writable ? (
          <StationCable store={store} chosen={chosen} station={station} name={name} />
        ) : cable === null ? (
          '–'
        ) : (
          cable
        )}
      </span>
      <span role="gridcell" className="text-right tabular-nums max-sm:col-start-4 max-sm:row-start-2">
        {unknown > 0 ? words.atLeast(metres) : metres}
      </span>
      <span role="gridcell" className="text-right tabular-nums max-sm:sr-only">
        {loads}
      </span>
    </div>
  );
}
