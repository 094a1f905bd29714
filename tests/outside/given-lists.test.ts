import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { present } from '#base/assert.ts';
import { getRow } from '#base/table.ts';
import { rigSummary } from '#engine/check/rig-summary.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { importBytes, readFixtureFile } from '#tests/support/import-bytes.ts';

// Two lists handed to the project with what an independent count found in them. Source: the lists' own `.expected.json`.
describe('lists from outside', () => {
  it.each(['ropewalk-spring', 'ropewalk-autumn'])('%s imports to exactly what its count says', (name) => {
    const expected = JSON.parse(
      readFileSync(new URL(`../fixtures/lists/${name}.expected.json`, import.meta.url), 'utf8'),
    );
    const { rig, list } = importBytes(readFixtureFile(`${name}.csv`));
    expect(figures(rig)).toEqual(expected);
    expect(list.lines.filter((line) => line.kind === 'unread')).toEqual([]);
    expect(list.lines.flatMap((line) => line.remarks)).toEqual([]);
  });
});

function figures(rig: Rig) {
  const summary = rigSummary(rig);
  const named = (id: FixtureId) => {
    const { position, unit } = present(getRow(rig.fixtures, id), `no fixture ${id}`);
    return `${position} ${unit}`;
  };
  const overlaps = summary.overlapPairs.map(({ run, fixtures }) => ({
    universe: run.universe,
    slots: [run.first, run.last],
    units: fixtures.map(named).sort(),
  }));
  const { fixtures, patched, universes, slotsAsked, sharedChannels } = summary;
  const unpatched = summary.unpatched.map(named);
  const pastEnd = summary.pastEnd.map(named);
  return { fixtures, patched, unpatched, universes: [...universes], slotsAsked, overlaps, pastEnd, sharedChannels };
}
