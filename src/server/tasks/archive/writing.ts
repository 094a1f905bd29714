import { CAPS } from '#wire/caps.ts';
import type { TaskContext } from '../task-context.ts';
import { unreadable } from './archive-refused.ts';
import { logOf, storeLogPart, updatesOf } from './log-in.ts';
import type { LogKind } from './log-parts.ts';
import type { PartsIn } from './parts-in.ts';
import type { Renaming } from './renaming.ts';

/** What it takes to write what an archive brings: into which crew, and what its ids are here. */
export interface Writing {
  readonly context: TaskContext;
  readonly crewId: string;
  readonly renaming: Renaming;
  /** Somebody named by id alone. Throws when the archive does not say who that is. */
  readonly person: (id: string) => string;
}

/** A folder of an archive. */
export interface Folder {
  readonly folder: string;
  readonly parts: PartsIn;
}

/** Looks the log of a folder through, stores it as the log of `id`, and answers the state it comes to. */
export async function writeLog(
  { context, person }: Writing,
  { folder, parts }: Folder,
  { kind, id, head }: { readonly kind: LogKind; readonly id: string; readonly head: number },
): Promise<{ readonly seq: bigint; readonly bytes: Uint8Array<ArrayBuffer>; readonly at: Date }> {
  const log = logOf(parts, folder, head);
  const checked = await context.record.checkLog(updatesOf(log));
  if (!checked.ok) throw unreadable(`${folder}/log/1.bin`);
  for (const part of log) await storeLogPart(context.store.sql, { kind, id, person }, part);
  const { seq, bytes } = checked.value;
  return { seq: BigInt(seq), bytes: Uint8Array.from(bytes), at: new Date(context.clock.now()) };
}

/** A text of a folder that is no longer than such a text may be. */
export function boundedText({ parts }: Folder, name: string, most: number = CAPS.revisionText): string {
  const text = parts.text(name);
  if (text.length > most) throw unreadable(name);
  return text;
}
