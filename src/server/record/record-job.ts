import { createHash } from 'node:crypto';
import { deflateSync, inflateSync } from 'node:zlib';
import * as Y from 'yjs';
import { ok, type Result, refuse } from '#base/result.ts';
import { beginDoc } from '#document/edit/begin-doc.ts';
import { freezeRig, thawRig } from '#document/frozen/frozen-rig.ts';
import { readRig } from '#document/read/rig-reader.ts';
import { checkRig } from '#engine/check/check-rig.ts';
import type { NewestRevisions } from '#engine/check/type-findings.ts';
import type { Finding, Severity } from '#engine/model/finding.ts';
import type { Rig } from '#engine/model/rig.ts';
import { blockerKey } from '#wire/blocker-key.ts';
import { CAPS } from '#wire/caps.ts';
import { loadRig } from '../stored/load-rig.ts';
import type { StoredRig } from '../stored/stored-rig.ts';
import { type ArchiveJob, type ArchiveOutcome, doArchiveJob } from './archive-job.ts';
import { freezeMoment, type MomentJob, type Replayed, type ReplayJob, replay } from './replay.ts';

/** What a thread is asked to do: freeze a rig from the rows of its log, begin a document as a frozen rig, replay a log, or look through an archive. */
export type RecordJob =
  | { readonly kind: 'freeze'; readonly rows: StoredRig; readonly newest: NewestRevisions }
  | { readonly kind: 'begin'; readonly frozen: Frozen }
  | ReplayJob
  | MomentJob
  | ArchiveJob;

/** A frozen rig as it is stored: its text, deflated, and what that text has to hash to. */
export interface Frozen {
  readonly content: Uint8Array<ArrayBuffer>;
  /** SHA-256 of the text in UTF-8, hexadecimal. */
  readonly hash: string;
}

/** A frozen rig with what the rules say of it. */
export interface CheckedRig extends Frozen {
  /** Characters of its text. */
  readonly size: number;
  readonly units: number;
  readonly counts: Readonly<Record<Severity, number>>;
  /** `Finding[]` as JSON, deflated. */
  readonly findings: Uint8Array<ArrayBuffer>;
  /** Its blockers, by `blockerKey`. */
  readonly blockers: readonly string[];
}

/** A revision before it has a number. */
export interface FreshRevision extends CheckedRig {
  /** The place in the log that it was read at. */
  readonly seq: number;
}

export type FreezeOutcome = Result<FreshRevision, 'rig-too-large'>;
/** The first update of the log of a rig that begins as the frozen one. */
export type BeginOutcome = Result<Uint8Array<ArrayBuffer>, 'revision-damaged'>;

type Outcome = FreezeOutcome | BeginOutcome | Replayed | Uint8Array<ArrayBuffer> | ArchiveOutcome;

export function doRecordJob(job: RecordJob): Outcome | Promise<Outcome> {
  switch (job.kind) {
    case 'freeze':
      return freeze(job.rows, job.newest);
    case 'begin':
      return begin(job.frozen);
    case 'replay':
      return replay(job);
    case 'moment':
      return freezeMoment(job);
    default:
      return doArchiveJob(job);
  }
}

function freeze(rows: StoredRig, newest: NewestRevisions): FreezeOutcome {
  const { doc, seq } = loadRig(rows);
  const rig = readRig(doc);
  doc.destroy();
  const text = freezeRig(rig);
  if (text.length > CAPS.revisionText) return refuse('rig-too-large');
  return ok({ ...checked(rig, text, newest), seq });
}

/** A rig, whose frozen text is `text`, as it is stored. */
export function checked(rig: Rig, text: string, newest: NewestRevisions): CheckedRig {
  const findings = checkRig(rig, newest);
  return {
    content: deflated(text),
    hash: hashOf(text),
    size: text.length,
    units: rig.fixtures.size,
    counts: countsOf(findings),
    findings: deflated(JSON.stringify(findings)),
    blockers: findings.flatMap(({ severity, key }) => (severity === 'blocker' ? [blockerKey(key)] : [])),
  };
}

function begin(frozen: Frozen): BeginOutcome {
  const text = frozenText(frozen);
  const thawed = text === undefined ? undefined : thawRig(text);
  if (!thawed?.ok) return refuse('revision-damaged');
  const doc = beginDoc(thawed.value);
  const update = Uint8Array.from(Y.encodeStateAsUpdate(doc));
  doc.destroy();
  return ok(update);
}

/** The text of a frozen rig; undefined when it is not what its hash says, or is larger than any may be. */
export function frozenText({ content, hash }: Frozen): string | undefined {
  try {
    const text = inflateSync(content, { maxOutputLength: CAPS.revisionText * 3 }).toString('utf8');
    return hashOf(text) === hash ? text : undefined;
  } catch {
    // Bytes that inflate to nothing, or to too much, are no frozen rig.
    return undefined;
  }
}

export const hashOf = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

const deflated = (text: string): Uint8Array<ArrayBuffer> => Uint8Array.from(deflateSync(text));

function countsOf(findings: readonly Finding[]): Record<Severity, number> {
  const counts = { blocker: 0, caution: 0, note: 0 };
  for (const { severity } of findings) counts[severity] += 1;
  return counts;
}
