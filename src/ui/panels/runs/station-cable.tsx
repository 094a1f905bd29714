import type { Station } from '#engine/network/runs/measured-run.ts';
import type { RunLine } from '#engine/network/runs/run-list.ts';
import { RUNS_WORDS as words } from '#words/runs.ts';
import { writeCells } from '../../grid/plans/write-cells.ts';
import { LineField } from '../../kit/line-field.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { CardCell } from '../../plant/card-cell.tsx';

export interface StationCableProps {
  readonly store: RigStore;
  readonly chosen: RunLine;
  readonly station: Station;
  readonly name: string;
}

/** The metres of cable to a unit or splitter; to the first of a run they are its lead. */
export function StationCable({ store, chosen, station, name }: StationCableProps) {
  const { link, place, cable } = station;
  const called = words.cableTo(name);
  const card = { store, rig: store.rig(), plan: 'set-run', name: called, disabled: false } as const;
  if (place === 1 && chosen.run !== undefined) {
    const own = cable === null ? {} : { placeholder: String(cable) };
    return <CardCell {...card} {...own} card="run" of={chosen.key} field="lead" />;
  }
  if (link.kind === 'splitter') return <CardCell {...card} card="splitter" of={link.id} field="cable" />;
  const { id } = link.fixture;
  return (
    <LineField
      name={called}
      value={cable === null ? '' : String(cable)}
      inputMode="decimal"
      onWrite={(text) => {
        const plan = writeCells(store.rig(), { rows: [id], columns: ['cable'] }, text);
        if (plan !== undefined) store.apply({ ...plan, name: 'set-run' });
      }}
    />
  );
}
