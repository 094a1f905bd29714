import { useMemo } from 'react';
import { universesInUse } from '#engine/address/occupancy.ts';
import { portKey } from '#engine/model/card.ts';
import { setCard } from '#engine/model/card-edits.ts';
import { namedSource } from '#engine/model/named-source.ts';
import { type Plant, plantOf, type Run } from '#engine/model/plant.ts';
import type { Rig } from '#engine/model/rig.ts';
import { type RunSource, spellSource } from '#engine/model/run-source.ts';
import { carriedByPorts } from '#engine/network/carried.ts';
import { sourceWords } from '#words/run-names.ts';
import { RUNS_WORDS as words } from '#words/runs.ts';
import { BareSelect } from '../../kit/select.tsx';
import type { RigStore } from '../../live/rig-store.ts';

export interface SourceChoiceProps {
  readonly store: RigStore;
  readonly rig: Rig;
  readonly run: Run;
  readonly disabled: boolean;
}

/** Where a run begins: at a port with what it carries, an output of a splitter, or the desk. */
export function SourceChoice({ store, rig, run, disabled }: SourceChoiceProps) {
  const value = spellSource(run.from);
  const choices = useMemo(() => {
    const sources = sourcesOf(rig, plantOf(rig.cards));
    const known = sources.some((source) => spellSource(source) === value);
    return (known ? sources : [...sources, run.from]).map((source) => ({
      value: spellSource(source),
      label: labelOf(plantOf(rig.cards), source),
    }));
  }, [rig, run, value]);
  return (
    <BareSelect
      name={words.of(words.from, run.name)}
      choices={choices}
      value={value}
      disabled={disabled}
      onChoose={(from) => {
        store.apply({ name: 'set-run', edits: setCard('run', run.key, { from: from === '' ? null : from }) });
      }}
    />
  );
}

function sourcesOf(rig: Rig, plant: Plant): readonly RunSource[] {
  const said = [...plant.ports.values()];
  const ports = plant.nodes.flatMap(({ id, ports: count }) => {
    const most = said.reduce((top, { node, index }) => (node === id ? Math.max(top, index) : top), count);
    return Array.from({ length: most }, (_, at): RunSource => ({ kind: 'port', port: portKey(id, at + 1) }));
  });
  const outputs = plant.splitters.flatMap(({ id, outputs: count }) =>
    Array.from({ length: count }, (_, at): RunSource => ({ kind: 'splitter', splitter: id, output: at + 1 })),
  );
  const universes = [...new Set([...universesInUse(rig), ...plant.deliveries.keys()])].sort((a, b) => a - b);
  const cables = universes.map((universe) => ({ kind: 'cable', universe }) as RunSource);
  return [{ kind: 'none' }, ...ports, ...outputs, ...cables];
}

function labelOf(plant: Plant, source: RunSource): string {
  const named = sourceWords(namedSource(plant, source));
  if (source.kind !== 'port') return named;
  const carried = carriedByPorts(plant).get(source.port) ?? [];
  return `${named}: ${words.carries(carried)}`;
}
