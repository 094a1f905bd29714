import { deflateSync } from 'node:zlib';
import * as Y from 'yjs';
import { z } from 'zod';
import { ok, type Result, refuse } from '#base/result.ts';
import { thawRig } from '#document/frozen/frozen-rig.ts';
import { fixtureTypeSchema } from '#document/schema/stored-pin.ts';
import { contentHash } from '#engine/type/content-hash.ts';
import { checkUpdate } from '../stored/check-update.ts';
import { loadRig } from '../stored/load-rig.ts';
import type { LoggedUpdate } from '../stored/stored-rig.ts';
import { type StoredSummary, summaryOf } from '../tasks/library/revision-content.ts';
import { sha256 } from '../tasks/library/sha256.ts';

/** What an archive brings, to be looked through before any of it is believed. */
export type ArchiveJob =
  | { readonly kind: 'check-log'; readonly updates: readonly LoggedUpdate[] }
  | { readonly kind: 'check-frozen'; readonly text: string; readonly findings: string }
  /** `hash`: what the type has to hash to; null when nothing says. */
  | { readonly kind: 'check-type'; readonly text: string; readonly hash: string | null };

/** The state that a log comes to, as its checkpoint. */
export type CheckedLog = Result<LoggedUpdate, 'unreadable'>;
/** A frozen rig and its findings, as they are stored: deflated. */
export type CheckedFrozen = Result<
  { readonly content: Uint8Array<ArrayBuffer>; readonly findings: Uint8Array<ArrayBuffer>; readonly size: number },
  'unreadable'
>;
export type CheckedType = Result<
  { readonly maker: string; readonly model: string; readonly guid: string; readonly summary: StoredSummary },
  'unreadable'
>;
export type ArchiveOutcome = CheckedLog | CheckedFrozen | CheckedType;

export async function doArchiveJob(job: ArchiveJob): Promise<ArchiveOutcome> {
  switch (job.kind) {
    case 'check-log':
      return checkLog(job.updates);
    case 'check-frozen':
      return checkFrozen(job.text, job.findings);
    default:
      return checkType(job.text, job.hash);
  }
}

/** Every update as it would have been checked had it come by a socket, and then all of them together. */
function checkLog(updates: readonly LoggedUpdate[]): CheckedLog {
  const known = new Map<number, number>();
  for (const { bytes } of updates) {
    const reach = checkUpdate(bytes, known);
    if (!reach.ok) return refuse('unreadable');
    for (const [client, end] of reach.value) known.set(client, end);
  }
  const { doc, seq } = loadRig({ checkpoint: undefined, tail: updates });
  const bytes = Uint8Array.from(Y.encodeStateAsUpdate(doc));
  doc.destroy();
  return ok({ seq, bytes });
}

const Findings = z.array(
  z.looseObject({ rule: z.string(), severity: z.enum(['blocker', 'caution', 'note']), key: z.string() }),
);

function checkFrozen(text: string, findings: string): CheckedFrozen {
  if (!thawRig(text).ok || !Findings.safeParse(parsed(findings)).success) return refuse('unreadable');
  const deflated = (each: string) => Uint8Array.from(deflateSync(each));
  return ok({ content: deflated(text), findings: deflated(findings), size: text.length });
}

async function checkType(text: string, hash: string | null): Promise<CheckedType> {
  const read = fixtureTypeSchema.strict().safeParse(parsed(text));
  if (!read.success) return refuse('unreadable');
  if (hash !== null && (await contentHash(read.data, sha256)) !== hash) return refuse('unreadable');
  const { maker, model, guid } = read.data;
  return ok({ maker, model, guid, summary: summaryOf(read.data) });
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    // No JSON: the schema that looks at it next refuses it.
    return undefined;
  }
}
