import { inflateSync } from 'node:zlib';
import { ok, type Result, refuse } from '#base/result.ts';
import { thawRig } from '#document/frozen/frozen-rig.ts';
import type { NewestRevisions } from '#engine/check/type-findings.ts';
import type { HandoverAbout } from '#engine/handover/handover-about.ts';
import type { HandoverRefusal } from '#engine/handover/handover-refusal.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { Rig } from '#engine/model/rig.ts';
import { makeSheet } from '#engine/sheet/make-sheet.ts';
import { writeSheet } from '#exchange/csv/write-sheet.ts';
import { readHandover } from '#exchange/handover/read-handover.ts';
import { writeHandover } from '#exchange/handover/write-handover.ts';
import { CAPS } from '#wire/caps.ts';
import { handoverReadMe } from '#words/handover-file.ts';
import { NOTHING_STANDS, sheetHead, sheetHeading, sheetPartTitle, standingOf } from '#words/sheets.ts';
import { unpack } from '../archive/unpack.ts';
import { type CheckedRig, checked, type Frozen, frozenText } from '../record/record-job.ts';
import { sha256 } from '../tasks/library/sha256.ts';

/** What a thread is asked to do: write a file of a stored revision, or read one that somebody sent. */
export type HandoverJob =
  | { readonly kind: 'write'; readonly handover: ToWrite }
  | { readonly kind: 'read'; readonly bytes: Uint8Array<ArrayBuffer>; readonly newest: NewestRevisions };

export interface ToWrite {
  readonly about: HandoverAbout;
  readonly frozen: Frozen;
  /** `Finding[]` as JSON, deflated. */
  readonly findings: Uint8Array<ArrayBuffer>;
}

export type WriteOutcome = Result<Uint8Array<ArrayBuffer>, 'revision-damaged' | 'rig-too-large'>;

/** A file that was found whole: what it says of itself, and the rig in it with what our own rules say of it. */
export interface TakenHandover {
  readonly about: HandoverAbout;
  readonly rig: CheckedRig;
}
export type ReadOutcome = Result<TakenHandover, HandoverRefusal>;

export async function writeFile({ about, frozen, findings }: ToWrite): Promise<WriteOutcome> {
  const rig = frozenText(frozen);
  const thawed = rig === undefined ? undefined : thawRig(rig);
  if (rig === undefined || !thawed?.ok) return refuse('revision-damaged');
  const said = inflateSync(findings).toString('utf8');
  const found: readonly Finding[] = JSON.parse(said);
  const texts = {
    rig,
    findings: said,
    patch: patchOf(thawed.value, about, found),
    readMe: handoverReadMe(about, thawed.value, found),
  };
  const bytes = await writeHandover(about, texts, sha256);
  return bytes === undefined ? refuse('rig-too-large') : ok(Uint8Array.from(bytes));
}

function patchOf(rig: Rig, { rig: { name }, revision, writtenAt }: HandoverAbout, found: readonly Finding[]): string {
  const sheet = makeSheet('patch', rig, standingOf(rig, found));
  const head = sheetHead('patch', `${name}, revision ${revision.number}`, Date.parse(writtenAt));
  const words = { head, heading: sheetHeading, part: sheetPartTitle, nothingStands: NOTHING_STANDS };
  return [...writeSheet(sheet, words)].join('');
}

export async function readFile(bytes: Uint8Array<ArrayBuffer>, newest: NewestRevisions): Promise<ReadOutcome> {
  const read = await readHandover(bytes, { unpack, sha256 });
  if (!read.ok) return read;
  const { about, rig: text } = read.value;
  if (text.length > CAPS.revisionText) return refuse({ code: 'too-much' });
  const thawed = thawRig(text);
  if (!thawed.ok) return refuse({ code: 'rig-unreadable', newer: thawed.error === 'newer' });
  return ok({ about, rig: checked(thawed.value, text, newest) });
}
