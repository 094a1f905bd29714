import { z } from 'zod';
import {
  type FixtureType,
  HAZARD_KINDS,
  LASER_CLASSES,
  PART_KINDS,
  type Resolution,
} from '#engine/model/fixture-type.ts';
import type { Pin } from '#engine/type/pin.ts';

/** Characters of one pinned mode, at most: one of 500 slots with all its ranges takes about 100,000. */
export const PIN_LIMIT = 2_000_000;

const text = z.string();
const whole = z.number().int().min(0);
const value = whole.max(2 ** 32 - 1);
const positive = z.number().gt(0).nullable();
const physicalRange = z.object({ from: z.number(), to: z.number() }).nullable();
const functionName = z.object({ attribute: text, name: text });
const resolution = z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4)]) satisfies z.ZodType<Resolution>;

const condition = z.object({
  part: text,
  attribute: text,
  within: functionName.nullable(),
  from: value,
  to: value,
});

const channelFunction = z.object({
  name: text,
  attribute: text,
  from: value,
  default: value,
  physical: physicalRange,
  when: condition.nullable(),
  ranges: z.array(z.object({ name: text, from: value, physical: physicalRange })),
});

const channelUse = z.object({
  attribute: text,
  snap: z.enum(['No', 'Yes', 'On', 'Off']),
  master: z.enum(['None', 'Grand', 'Group']),
  functions: z.array(channelFunction),
});

const channel = z.object({
  part: text,
  break: z.union([whole, z.literal('of-copy')]),
  offsets: z.array(whole.max(1_000_000)).max(4),
  resolution,
  highlight: value.nullable(),
  initial: functionName.nullable(),
  uses: z.array(channelUse),
});

const mode = z.object({
  name: text,
  description: text,
  root: text,
  channels: z.array(channel),
  firmware: z.array(text),
});

const part = z.object({
  name: text,
  kind: z.enum(PART_KINDS),
  within: text.nullable(),
  copy: z.object({ of: text, starts: z.array(z.object({ break: whole, slot: z.number().int() })) }).nullable(),
});

const hazardFlags = Object.fromEntries(HAZARD_KINDS.map((kind) => [kind, z.boolean()])) as Record<
  (typeof HAZARD_KINDS)[number],
  z.ZodBoolean
>;

/** A fixture type of any content, as far as its shape goes. */
export const fixtureTypeSchema = z.object({
  maker: text,
  model: text,
  shortName: text,
  description: text,
  guid: text,
  parts: z.array(part),
  modes: z.array(mode),
  physical: z.object({
    weight: positive,
    power: positive,
    powerFactor: z.number().nullable(),
    voltage: z.object({ low: z.number(), high: z.number() }).nullable(),
    connector: text,
    perBreaker: z.array(z.object({ breaker: text, most: text })),
  }),
  settings: z.object({ switches: z.enum(['A', 'B']).nullable(), onLoss: text }),
  hazards: z.object({ laser: z.enum(LASER_CLASSES).nullable(), ...hazardFlags }),
}) satisfies z.ZodType<FixtureType>;

export const pinSchema = z.object({
  typeId: z.string().min(1).max(64),
  number: whole,
  hash: z.string().max(128),
  type: fixtureTypeSchema,
}) satisfies z.ZodType<Pin>;

/** A pin as a mode's entry keeps it: JSON text, one value that merges as a whole. */
export const storePin = (pin: Pin): string => JSON.stringify(pin);

/** Undefined for what is no pin; the mode is then known by its footprint only. */
export function readPin(stored: unknown): Pin | undefined {
  if (typeof stored !== 'string' || stored.length > PIN_LIMIT) return undefined;
  const known = read.get(stored);
  if (known !== undefined) return known;
  const pin = pinSchema.safeParse(parseJson(stored)).data;
  if (pin === undefined) return undefined;
  if (read.size >= REMEMBERED) read.clear();
  read.set(stored, pin);
  return pin;
}

// A rig's modes are read again with every change of one; this only saves work, and is emptied when it fills up.
const REMEMBERED = 256;
const read = new Map<string, Pin>();

function parseJson(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    // No text that this code wrote: it is no pin, and stays in the document as it is.
    return undefined;
  }
}
