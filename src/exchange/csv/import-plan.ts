import type { MakeId } from '#base/random-id.ts';
import { getRow, rowsOf } from '#base/table.ts';
import type { FixtureList } from '#engine/list/read-list.ts';
import type { Universe } from '#engine/model/address.ts';
import { cardId } from '#engine/model/card.ts';
import type { Edit, Plan } from '#engine/model/edit.ts';
import type { Cells } from '#engine/model/fixture.ts';
import { fixtureId, foldName, modeId, noteId, positionId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';

/**
 * The plan that takes a list into a rig: one undoable step. `order` is where the first row goes, the others follow by 1; a
 * sheet of ours keeps the order it says when the rig has no rows yet. `exclude` holds source lines to be left out.
 * Positions, modes, labels, notes and cards that the rig has already stay as they are.
 */
export function importPlan(
  rig: Rig,
  list: FixtureList,
  makeId: MakeId,
  order: number,
  exclude: ReadonlySet<number> = new Set(),
): Plan {
  const included = list.lines.flatMap((line) =>
    line.kind === 'fixtures' && !exclude.has(line.line) ? line.fixtures : [],
  );
  const dropped = list.lines.flatMap((line) =>
    line.kind === 'fixtures' && exclude.has(line.line) ? line.fixtures : [],
  );
  const needed = neededBy(included, dropped);
  const keepOrder = rig.fixtures.size === 0;
  const fixtures = included.map((cells, index): Edit => {
    const placed = keepOrder && cells.order !== undefined ? cells.order : order + index;
    return { kind: 'add-fixture', fixture: fixtureId(makeId()), cells: { ...cells, order: placed } };
  });
  const edits = [
    ...positionEdits(rig, list, needed.position),
    ...modeEdits(rig, list, needed.mode),
    ...labelEdits(rig, list),
    ...fixtures,
    ...list.notes.map((note): Edit => ({ kind: 'set-note', note: noteId(makeId()), ...note })),
    ...list.wanted
      .filter(({ type }) => !getRow(rig.wanted, foldName(type)))
      .map((wanted): Edit => ({ kind: 'set-wanted', ...wanted })),
    ...list.cards.filter(({ card, key }) => !getRow(rig.cards, cardId(card, key))),
  ];
  return { name: 'import', edits };
}

/**
 * Source lines whose fixtures stand in the rig already, by position, unit and channel: the person may want to leave them
 * out. A fixture without unit and channel is never taken for another.
 */
export function linesAlreadyIn(rig: Rig, list: FixtureList): ReadonlySet<number> {
  const known = new Set<string>();
  for (const { position, unit, channel } of rowsOf(rig.fixtures)) known.add(placeKey(position, unit, channel));
  const already = new Set<number>();
  for (const line of list.lines) {
    if (line.kind !== 'fixtures') continue;
    const found = line.fixtures.some((cells) => {
      const { position = '', unit = '', channel = null } = cells;
      const named = unit !== '' || typeof channel === 'number';
      return named && known.has(placeKey(String(position), String(unit), channel));
    });
    if (found) already.add(line.line);
  }
  return already;
}

const placeKey = (position: string, unit: string, channel: Cells['channel']) =>
  JSON.stringify([foldName(position), foldName(unit), channel]);

/** Tells what an import without some lines still needs: what a line that is taken in uses, and what no line uses at all. */
function neededBy(included: readonly Cells[], dropped: readonly Cells[]) {
  const modeOf = (cells: Cells) => modeId(String(cells.type ?? ''), String(cells.mode ?? ''));
  const placeOf = (cells: Cells) => positionId(String(cells.position ?? ''));
  const needs = <Id>(idOf: (cells: Cells) => Id) => {
    const used = new Set(included.map(idOf));
    const unused = new Set(dropped.map(idOf));
    return (id: Id) => used.has(id) || !unused.has(id);
  };
  return { mode: needs(modeOf), position: needs(placeOf) };
}

type PositionNeeded = ReturnType<typeof neededBy>['position'];
type ModeNeeded = ReturnType<typeof neededBy>['mode'];

function positionEdits(rig: Rig, list: FixtureList, needed: PositionNeeded): readonly Edit[] {
  let last = 0;
  for (const position of rowsOf(rig.positions)) last = Math.max(last, position.order);
  const fresh = list.positions.filter(
    ({ name }) => needed(positionId(name)) && !getRow(rig.positions, positionId(name)),
  );
  return fresh.map(({ name, order }, index): Edit => {
    const placed = rig.positions.size === 0 && order !== null ? order : Math.floor(last) + 1 + index;
    return { kind: 'set-position', name, order: placed };
  });
}

function modeEdits(rig: Rig, list: FixtureList, needed: ModeNeeded): readonly Edit[] {
  return list.modes
    .filter(({ type, mode }) => needed(modeId(type, mode)) && !getRow(rig.modes, modeId(type, mode)))
    .map(({ type, mode, footprints }): Edit => ({ kind: 'set-mode', type, mode, footprints }));
}

function labelEdits(rig: Rig, list: FixtureList): readonly Edit[] {
  return list.universes
    .filter(({ universe }) => !getRow(rig.universes, String(universe)))
    .map(({ universe, label }): Edit => ({ kind: 'set-universe', universe: universe as Universe, label }));
}
