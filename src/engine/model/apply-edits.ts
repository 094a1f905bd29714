import { changeRows, getRow, type RowChange, removeRow, setRow } from '#base/table.ts';
import { unreachable } from '#base/unreachable.ts';
import { cardId, withCell } from './card.ts';
import type { Edit } from './edit.ts';
import type { Fixture } from './fixture.ts';
import { type FixtureId, foldName, modeId, positionId } from './ids.ts';
import { cellOf, cellsOf, readFixture } from './read-fixture.ts';
import type { Rig } from './rig.ts';

type FixtureEdit = Extract<Edit, { kind: 'add-fixture' | 'remove-fixture' | 'set-cell' }>;

/**
 * The rig with `edits` made, in order: what a preview shows. An edit of a fixture that is not there changes nothing.
 * `document/edit` does the same to a document, and the tests hold the two to each other.
 */
export function applyEdits(rig: Rig, edits: readonly Edit[]): Rig {
  const fixtures = new Map<FixtureId, Fixture | undefined>();
  let others = rig;
  for (const edit of edits) {
    if (isFixtureEdit(edit)) applyToFixture(rig, fixtures, edit);
    else others = applyToRest(others, edit);
  }
  const changes: RowChange<Fixture>[] = [...fixtures].map(([id, row]) => ({ id, row }));
  const table = changeRows(rig.fixtures, changes);
  return table === rig.fixtures ? others : Object.freeze({ ...others, fixtures: table });
}

function isFixtureEdit(edit: Edit): edit is FixtureEdit {
  return edit.kind === 'add-fixture' || edit.kind === 'remove-fixture' || edit.kind === 'set-cell';
}

function applyToFixture(rig: Rig, changed: Map<FixtureId, Fixture | undefined>, edit: FixtureEdit): void {
  const id = edit.fixture;
  if (edit.kind === 'add-fixture') changed.set(id, readFixture(id, edit.cells));
  else if (edit.kind === 'remove-fixture') changed.set(id, undefined);
  else {
    const before = changed.has(id) ? changed.get(id) : getRow(rig.fixtures, id);
    if (before === undefined || cellOf(before, edit.field) === edit.value) return;
    changed.set(id, readFixture(id, { ...cellsOf(before), [edit.field]: edit.value }));
  }
}

function applyToRest(rig: Rig, edit: Exclude<Edit, FixtureEdit>): Rig {
  switch (edit.kind) {
    case 'set-mode': {
      const { type, mode, footprints, pin = null } = edit;
      return Object.freeze({
        ...rig,
        modes: setRow(rig.modes, Object.freeze({ id: modeId(type, mode), type, mode, footprints, pin })),
      });
    }
    case 'remove-mode':
      return Object.freeze({ ...rig, modes: removeRow(rig.modes, modeId(edit.type, edit.mode)) });
    case 'set-position': {
      const { name, order } = edit;
      return Object.freeze({
        ...rig,
        positions: setRow(rig.positions, Object.freeze({ id: positionId(name), name, order })),
      });
    }
    case 'remove-position':
      return Object.freeze({ ...rig, positions: removeRow(rig.positions, positionId(edit.name)) });
    case 'set-universe': {
      const { universe, label } = edit;
      const id = String(universe);
      const universes =
        label === '' ? removeRow(rig.universes, id) : setRow(rig.universes, Object.freeze({ id, universe, label }));
      return Object.freeze({ ...rig, universes });
    }
    case 'set-note': {
      const { note, text, order } = edit;
      return Object.freeze({ ...rig, notes: setRow(rig.notes, Object.freeze({ id: note, text, order })) });
    }
    case 'remove-note':
      return Object.freeze({ ...rig, notes: removeRow(rig.notes, edit.note) });
    case 'set-wanted': {
      const { type, version } = edit;
      const id = foldName(type);
      const wanted =
        version === '' ? removeRow(rig.wanted, id) : setRow(rig.wanted, Object.freeze({ id, type, version }));
      return Object.freeze({ ...rig, wanted });
    }
    case 'set-signature': {
      const { hazard: id, person, on, types } = edit;
      const signatures =
        person === ''
          ? removeRow(rig.signatures, id)
          : setRow(rig.signatures, Object.freeze({ id, person, on, types }));
      return Object.freeze({ ...rig, signatures });
    }
    case 'set-card': {
      const id = cardId(edit.card, edit.key);
      const cards = changeRows(rig.cards, [{ id, row: withCell(getRow(rig.cards, id), edit) }]);
      return cards === rig.cards ? rig : Object.freeze({ ...rig, cards });
    }
    default:
      return unreachable(edit);
  }
}
