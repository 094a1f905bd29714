import type { RowDifference } from '#base/table.ts';
import type { Card, CardEdit, CardField } from '../model/card.ts';
import type { Edit } from '../model/edit.ts';
import { FIELDS, type Field } from '../model/field.ts';
import type { Fixture } from '../model/fixture.ts';
import { cellOf, cellsOf } from '../model/read-fixture.ts';
import type { Mode, Note, Position, Signature, UniverseLabel, WantedFirmware } from '../model/rig.ts';
import type { RigDiff } from './rig-diff.ts';

/** The edits that make of the first rig the second; of a rig that holds other things besides, they leave those alone. [DF2] */
export function diffEdits(diff: RigDiff): readonly Edit[] {
  return [
    ...diff.modes.map(modeEdit),
    ...diff.positions.map(positionEdit),
    ...diff.universes.map(universeEdit),
    ...diff.notes.map(noteEdit),
    ...diff.wanted.map(wantedEdit),
    ...diff.signatures.map(signatureEdit),
    ...diff.cards.flatMap(cardEdits),
    ...diff.fixtures.flatMap(fixtureEdits),
  ];
}

/** The fields in which a row that is in both rigs differs, in the order of `FIELDS`. */
export const differingFields = (before: Fixture, after: Fixture): readonly Field[] =>
  FIELDS.filter((field) => !Object.is(cellOf(before, field), cellOf(after, field)));

export function fixtureEdits({ before, after }: RowDifference<Fixture>): readonly Edit[] {
  if (after === undefined) return before === undefined ? [] : [{ kind: 'remove-fixture', fixture: before.id }];
  if (before === undefined) return [{ kind: 'add-fixture', fixture: after.id, cells: cellsOf(after) }];
  return differingFields(before, after).map((field) => ({
    kind: 'set-cell',
    fixture: after.id,
    field,
    value: cellOf(after, field),
  }));
}

export function modeEdit({ before, after }: RowDifference<Mode>): Edit {
  if (after === undefined) return { kind: 'remove-mode', type: before?.type ?? '', mode: before?.mode ?? '' };
  const { type, mode, footprints, pin } = after;
  return { kind: 'set-mode', type, mode, footprints, pin };
}

export const positionEdit = ({ before, after }: RowDifference<Position>): Edit =>
  after === undefined
    ? { kind: 'remove-position', name: before?.name ?? '' }
    : { kind: 'set-position', name: after.name, order: after.order };

export const universeEdit = ({ id, after }: RowDifference<UniverseLabel>): Edit => ({
  kind: 'set-universe',
  universe: Number(id) as UniverseLabel['universe'],
  label: after?.label ?? '',
});

export const noteEdit = ({ id, after }: RowDifference<Note>): Edit =>
  after === undefined
    ? { kind: 'remove-note', note: id as Note['id'] }
    : { kind: 'set-note', note: after.id, text: after.text, order: after.order };

export const wantedEdit = ({ before, after }: RowDifference<WantedFirmware>): Edit => ({
  kind: 'set-wanted',
  type: (after ?? before)?.type ?? '',
  version: after?.version ?? '',
});

export const signatureEdit = ({ id, after }: RowDifference<Signature>): Edit => ({
  kind: 'set-signature',
  hazard: id as Signature['id'],
  person: after?.person ?? '',
  on: after?.on ?? '',
  types: after?.types ?? [],
});

export function cardEdits({ before, after }: RowDifference<Card>): readonly CardEdit[] {
  const card = after ?? before;
  if (card === undefined) return [];
  const fields = [...new Set([...Object.keys(before?.cells ?? {}), ...Object.keys(after?.cells ?? {})])] as CardField[];
  return fields.flatMap((field) => {
    const value = after?.cells[field] ?? null;
    if (value === (before?.cells[field] ?? null)) return [];
    return [{ kind: 'set-card', card: card.kind, key: card.key, field, value }];
  });
}
