import { z } from 'zod';
import { LAST_UNIVERSE, type Universe } from '#engine/model/address.ts';
import { CARD_KINDS, type CardEdit, type CardKind, isCardField, isCardKey } from '#engine/model/card.ts';
import type { Edit } from '#engine/model/edit.ts';
import { CELL_LIMIT, type CellValue, FIELDS, type Field } from '#engine/model/field.ts';
import type { Cells } from '#engine/model/fixture.ts';
import { SIGNED_HAZARDS, type SignedHazard } from '#engine/model/fixture-type.ts';
import { type FixtureId, foldName, isId, type NoteId } from '#engine/model/ids.ts';
import { footprintsSchema } from '../schema/stored.ts';
import { PIN_LIMIT, pinSchema, storePin } from '../schema/stored-pin.ts';

/** Edits in one plan, at most. */
export const EDIT_LIMIT = 50_000;

// Half a surrogate pair cannot be sent to anybody: it would read differently here and there.
const LONE_SURROGATE = /[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/;
const isWhole = (text: string) => !LONE_SURROGATE.test(text);

const text = z.string().max(CELL_LIMIT).refine(isWhole, 'half a character');
const name = text.refine((value) => foldName(value) !== '', 'no name');
const cellValue = z.union([text, z.number(), z.null()]) satisfies z.ZodType<CellValue>;
const isWholeId = (value: string) => isId(value) && isWhole(value);
const fixture = z
  .string()
  .max(64)
  .refine(isWholeId, 'no id')
  .transform((value) => value as FixtureId);
const note = z
  .string()
  .max(64)
  .refine(isWholeId, 'no id')
  .transform((value) => value as NoteId);
const universe = z
  .number()
  .int()
  .min(1)
  .max(LAST_UNIVERSE)
  .transform((value) => value as Universe);
const field = z.enum(FIELDS) satisfies z.ZodType<Field>;
const pin = pinSchema
  .refine((value) => isWhole(storePin(value)), 'half a character')
  .refine((value) => storePin(value).length <= PIN_LIMIT, 'too long');
const cells = z.partialRecord(field, cellValue).transform((value): Cells => value);

const cardEdit = z
  .strictObject({
    kind: z.literal('set-card'),
    card: z.enum(CARD_KINDS as readonly [CardKind, ...CardKind[]]),
    key: text,
    field: z.string(),
    value: cellValue,
  })
  .refine(({ card, key }) => isCardKey(card, key), { path: ['key'], message: 'no key' })
  .refine(({ card, field: of }) => isCardField(card, of), { path: ['field'], message: 'no such cell' })
  .transform((edit) => edit as CardEdit);

const editSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('add-fixture'), fixture, cells }),
  z.strictObject({ kind: z.literal('remove-fixture'), fixture }),
  z.strictObject({ kind: z.literal('set-cell'), fixture, field, value: cellValue }),
  z.strictObject({
    kind: z.literal('set-mode'),
    type: name,
    mode: text,
    footprints: footprintsSchema,
    pin: pin.nullable().optional(),
  }),
  z.strictObject({ kind: z.literal('remove-mode'), type: text, mode: text }),
  z.strictObject({ kind: z.literal('set-position'), name, order: z.number() }),
  z.strictObject({ kind: z.literal('remove-position'), name: text }),
  z.strictObject({ kind: z.literal('set-universe'), universe, label: text }),
  z.strictObject({ kind: z.literal('set-note'), note, text, order: z.number() }),
  z.strictObject({ kind: z.literal('remove-note'), note }),
  z.strictObject({ kind: z.literal('set-wanted'), type: name, version: text }),
  z.strictObject({
    kind: z.literal('set-signature'),
    hazard: z.enum(SIGNED_HAZARDS) satisfies z.ZodType<SignedHazard>,
    person: text,
    on: text,
    types: z.array(text).max(10_000),
  }),
  cardEdit,
]);

export const planSchema = z.strictObject({
  name: z.enum([
    'edit',
    'paste',
    'fill',
    'series',
    'insert',
    'duplicate',
    'remove',
    'move',
    'swap',
    'place',
    'clear-clash',
    'allocate',
    'repair',
    'renumber-channels',
    'renumber-units',
    'import',
    'set-mode',
    'set-position',
    'set-universe',
    'set-note',
    'take-type',
    'set-wanted',
    'sign-hazard',
    'set-network',
    'set-run',
    'set-supply',
    'balance',
    'set-limit',
    'set-house',
    'report-fault',
    'mend-fault',
    'swap-device',
    'note-reading',
    'set-hire',
    'lock',
    'put-back',
    'go-back',
    'tick',
    'take-proposal',
  ]),
  edits: z.array(editSchema).max(EDIT_LIMIT),
});

/** Edits that were stored or sent as JSON; undefined when any of them is none. */
export function readEdits(edits: unknown): readonly Edit[] | undefined {
  const plan = planSchema.safeParse({ name: 'take-proposal', edits });
  // JSON knows no undefined: what is optional is there or is left out.
  return plan.success ? (plan.data.edits as readonly Edit[]) : undefined;
}
