import { z } from 'zod';
import { HAZARD_KINDS, type Hazards, LASER_CLASSES, type Physical, type Settings } from '#engine/model/fixture-type.ts';

/** The file of ours within a `.gdtf` that holds what the format has no place for. Others pass over it. */
export const OWN_NOTES_FILE = 'rigledger.json';

const text = z.string().max(100_000);
const hazards = z.object({
  laser: z.enum(LASER_CLASSES).nullable(),
  ...(Object.fromEntries(HAZARD_KINDS.map((kind) => [kind, z.boolean()])) as Record<
    (typeof HAZARD_KINDS)[number],
    z.ZodBoolean
  >),
});

const schema = z.object({
  format: z.literal(1),
  /** Names the description had to spell otherwise: as spelled, and as they are. */
  names: z.array(z.tuple([text, text])).max(100_000),
  settings: z.object({ switches: z.enum(['A', 'B']).nullable(), onLoss: text }),
  hazards,
  perBreaker: z.array(z.object({ breaker: text, most: text })).max(100),
  /** Firmware versions by mode, named as the description spells it. */
  firmware: z.array(z.tuple([text, z.array(text).max(1000)])).max(10_000),
});

/** What the format has no place for. Nothing of it repeats what the description says, so neither can contradict the other. */
export interface OwnNotes {
  readonly format: 1;
  readonly names: readonly (readonly [spelled: string, name: string])[];
  readonly settings: Settings;
  readonly hazards: Hazards;
  readonly perBreaker: Physical['perBreaker'];
  readonly firmware: readonly (readonly [mode: string, versions: readonly string[]])[];
}

/** Reads the file back; undefined when it is not as we write it. */
export function readOwnNotes(bytes: Uint8Array): OwnNotes | undefined {
  const read = schema.safeParse(parseJson(new TextDecoder().decode(bytes)));
  return read.success ? read.data : undefined;
}

export function writeOwnNotes(notes: OwnNotes): Uint8Array {
  return new TextEncoder().encode(`${JSON.stringify(notes, null, 1)}\n`);
}

function parseJson(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch (error) {
    // The only error of parsing: what is no JSON fits no schema either.
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}
