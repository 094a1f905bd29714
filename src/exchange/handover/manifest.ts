import { z } from 'zod';
import type { HandoverAbout } from '#engine/handover/handover-about.ts';

/** The number of this file format: a reader refuses a higher one. */
export const HANDOVER_FORMAT = 1;

/** What stands in the archive, in the order in which it is written. The seal is the hash of the manifest, which has the hashes of the rest. */
export const PARTS = {
  findings: 'findings.json',
  manifest: 'manifest.json',
  patch: 'patch.csv',
  readMe: 'read-me.txt',
  rig: 'rig.json',
  seal: 'seal.txt',
} as const;

const Id = z.string().regex(/^[A-Za-z0-9_-]{1,64}$/);
const Named = z.string().max(200);
const Said = z.string().max(2000);
const Hash = z.string().regex(/^[0-9a-f]{64}$/);
const Count = z.number().int().min(0).max(10_000_000);
const Ordinal = z.number().int().min(1).max(1_000_000);
const Instant = z.iso.datetime();

const About = z.object({
  from: z.object({ crewId: Id, crewName: Named, by: Named }),
  writtenAt: Instant,
  words: Said,
  rig: z.object({ id: Id, name: Named, kind: z.enum(['show', 'house']), venueName: Named.nullable() }),
  revision: z.object({
    number: Ordinal,
    hash: Hash,
    note: Said,
    by: Named,
    at: Instant,
    units: Count,
    counts: z.object({ blocker: Count, caution: Count, note: Count }),
    accepted: z.array(z.object({ key: z.string(), by: Named })).readonly(),
  }),
  startedFrom: z.object({ rigId: Id, rigName: Named, crewName: Named, number: Ordinal, hash: Hash }).nullable(),
}) satisfies z.ZodType<HandoverAbout>;

/** All that `manifest.json` may say; what it says beside that is passed over. */
export const Manifest = About.extend({
  format: z.literal(HANDOVER_FORMAT),
  /** For whoever opens it with a text editor. */
  what: z.string(),
  types: z.string(),
  /** Each other part but the seal: its bytes, and their SHA-256. */
  parts: z.record(z.string(), z.object({ bytes: Count, sha256: Hash })),
});
export type Manifest = z.infer<typeof Manifest>;

/** What the manifest says in words. */
export const MANIFEST_SAYS = {
  what: 'One frozen revision of a lighting rig, handed over from one crew to another. read-me.txt says the rest in plain words.',
  types: 'The modes of the fixture types in use, as they were copied into the rig, stand in rig.json under "modes".',
} as const;
