import { ok, type Result, refuse } from '#base/result.ts';
import { footprintAt } from '../address/claim.ts';
import { absolute, isAbsolute, LAST_UNIVERSE, SLOTS, slotOf, universeOf } from '../model/address.ts';
import { isAddressField } from '../model/cell-text.ts';
import type { Edit, Plan } from '../model/edit.ts';
import { ADDRESS_FIELDS, type AddressField, type PersonField } from '../model/field.ts';
import { modeOf } from '../model/find-mode.ts';
import type { Fixture } from '../model/fixture.ts';
import type { FixtureId } from '../model/ids.ts';
import { cellOf, LAST_CHANNEL } from '../model/read-fixture.ts';
import type { Rig } from '../model/rig.ts';
import { cellEdits, chosen, planOf } from './chosen.ts';
import { nextInSeries } from './next-unit.ts';
import type { PlanRefusal } from './plan-refusal.ts';

/** Copies the cells of the first fixture into the others, field by field. [PL7] */
export function fillDownPlan(
  rig: Rig,
  ids: readonly FixtureId[],
  fields: readonly PersonField[],
): Result<Plan, PlanRefusal> {
  const fixtures = chosen(rig, ids);
  if (!fixtures.ok) return fixtures;
  const [first, ...others] = fixtures.value;
  if (first === undefined) return refuse({ code: 'nothing-chosen' });
  return planOf(
    rig,
    'fill',
    others.flatMap((fixture) => fields.flatMap((field) => cellEdits(fixture, field, cellOf(first, field)))),
  );
}

/**
 * Goes on from the first fixture, field by field: channel + 1, unit + 1 (4A to 4B), address + footprint, to the next
 * universe where a footprint would cross slot 512. Any other field is copied. Several address fields of a fixture lie end
 * to end. Clashes with fixtures that were not chosen are for the preview to show. [PL8]
 */
export function seriesPlan(
  rig: Rig,
  ids: readonly FixtureId[],
  fields: readonly PersonField[],
): Result<Plan, PlanRefusal> {
  const fixtures = chosen(rig, ids);
  if (!fixtures.ok) return fixtures;
  const edits: Edit[] = [];
  const addressFields = ADDRESS_FIELDS.filter((field) => fields.includes(field));
  for (const field of fields) {
    if (isAddressField(field)) continue;
    const filled = fieldSeries(fixtures.value, field);
    if (!filled.ok) return filled;
    edits.push(...filled.value);
  }
  if (addressFields.length > 0) {
    const filled = addressSeries(rig, fixtures.value, addressFields);
    if (!filled.ok) return filled;
    edits.push(...filled.value);
  }
  return planOf(rig, 'series', edits);
}

type Edits = Result<readonly Edit[], PlanRefusal>;

function fieldSeries(fixtures: readonly Fixture[], field: PersonField): Edits {
  const [first, ...others] = fixtures;
  let value = first === undefined ? null : cellOf(first, field);
  const edits: Edit[] = [];
  for (const fixture of others) {
    const next =
      field === 'channel' ? nextChannel(value) : field === 'unit' ? nextInSeries(String(value ?? '')) : value;
    if (next === undefined) return refuse({ code: 'no-series', field });
    if (field === 'channel' && Number(next) > LAST_CHANNEL) {
      return refuse({ code: 'out-of-range', fixture: fixture.id, field, value: Number(next) });
    }
    edits.push(...cellEdits(fixture, field, next));
    value = next;
  }
  return ok(edits);
}

const nextChannel = (value: unknown) => (typeof value === 'number' ? value + 1 : undefined);

function addressSeries(rig: Rig, fixtures: readonly Fixture[], fields: readonly AddressField[]): Edits {
  const [first, ...others] = fixtures;
  const missing = fields.find((field) => first === undefined || typeof cellOf(first, field) !== 'number');
  if (first === undefined || missing !== undefined) return refuse({ code: 'no-series', field: missing ?? 'address' });
  const parts = fields.map((field) => ADDRESS_FIELDS.indexOf(field));
  const universes = new Set(parts.map((part) => universeOf(first.addresses[part] ?? absolute(1, 1))));
  if (universes.size === 1) return blockSeries(rig, first, others, parts);
  const edits: Edit[] = [];
  for (const part of parts) {
    const filled = blockSeries(rig, first, others, [part]);
    if (!filled.ok) return filled;
    edits.push(...filled.value);
  }
  return ok(edits);
}

function blockSeries(rig: Rig, first: Fixture, others: readonly Fixture[], parts: readonly number[]): Edits {
  const seed = modeOf(rig, first);
  let cursor: number = Math.max(...parts.map((part) => (first.addresses[part] ?? 0) + footprintAt(seed, part)));
  const edits: Edit[] = [];
  for (const fixture of others) {
    const mode = modeOf(rig, fixture);
    const length = parts.reduce((total, part) => total + footprintAt(mode, part), 0);
    if (length > SLOTS) return refuse({ code: 'too-wide', fixture: fixture.id, slots: length });
    cursor = startWithin(cursor, length);
    for (const part of parts) {
      const footprint = footprintAt(mode, part);
      const field = ADDRESS_FIELDS[part];
      if (footprint === 0 || field === undefined) continue;
      const start = cursor;
      if (!isAbsolute(start)) return refuse({ code: 'out-of-range', fixture: fixture.id, field, value: start });
      edits.push(...cellEdits(fixture, field, start));
      cursor += footprint;
    }
  }
  return ok(edits);
}

/** `cursor`, or the first slot of the next universe where `length` slots from `cursor` on would cross slot 512. */
function startWithin(cursor: number, length: number): number {
  if (!isAbsolute(cursor) || slotOf(cursor) + length - 1 <= SLOTS) return cursor;
  const universe = universeOf(cursor) + 1;
  return universe > LAST_UNIVERSE ? cursor + SLOTS : absolute(universe, 1);
}
