import { strFromU8, unzipSync } from 'fflate';
import { assert } from '#base/assert.ts';
import { ARCHIVE_IN_PATH, type ArchiveTaken, archivePath } from '#wire/crew-archive.ts';
import type { TestServer } from './test-server.ts';
import type { Answer, Visitor } from './visitor.ts';

/** Takes everything of a crew out, as a lead's browser would. */
export async function takeOutCrew({ url }: TestServer, lead: Visitor, crewId: string): Promise<Uint8Array> {
  const response = await fetch(`${url}${archivePath(crewId)}`, { headers: { cookie: lead.cookie } });
  assert(response.status === 200, `the archive was refused: ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
}

/** Sends bytes as an archive. */
export const sendArchive = (visitor: Visitor, bytes: Uint8Array): Promise<Answer> =>
  visitor.request('POST', ARCHIVE_IN_PATH, {
    body: Uint8Array.from(bytes),
    headers: { 'content-type': 'application/octet-stream' },
  });

export async function bringInCrew(visitor: Visitor, bytes: Uint8Array): Promise<ArchiveTaken> {
  const { status, text } = await sendArchive(visitor, bytes);
  assert(status === 200, `the archive was refused: ${text}`);
  return JSON.parse(text);
}

/** The parts of an archive, by another reader of zips than the server's. */
export const partsOf = (archive: Uint8Array): Readonly<Record<string, Uint8Array>> => unzipSync(archive);

export const jsonOf = (archive: Uint8Array, part: string) =>
  JSON.parse(strFromU8(partsOf(archive)[part] ?? new Uint8Array()));

/** Every entry of the audit of an archive, the oldest first. */
export function auditOf(archive: Uint8Array): readonly { readonly kind: string; readonly by: string }[] {
  const names = Object.keys(partsOf(archive)).filter((name) => name.startsWith('audit/'));
  const nth = (name: string) => Number.parseInt(name.slice('audit/'.length), 10);
  return names.sort((a, b) => nth(a) - nth(b)).flatMap((name) => jsonOf(archive, name));
}

/**
 * What is the same in every archive of the same data: all parts as text, but for the manifest, which has a time, for who is a member, and
 * for the audit, which says that the archive came in and went out.
 */
export function lasting(archive: Uint8Array): Readonly<Record<string, string>> {
  const lasts = ([name]: readonly [string, Uint8Array]) =>
    !['manifest.json', 'members.json'].includes(name) && !name.startsWith('audit/');
  return Object.fromEntries(
    Object.entries(partsOf(archive))
      .filter(lasts)
      .map(([name, bytes]) => [name, Buffer.from(bytes).toString('latin1')]),
  );
}

/** The same with every id of a thing of the crew, and of what a rig of it began as, replaced by its place: equal for archives that differ in those ids alone. */
export function lastingUpToIds(archive: Uint8Array): Readonly<Record<string, string>> {
  const ids: string[] = [];
  const crew = jsonOf(archive, 'crew.json');
  ids.push(crew.id, ...crew.venues.map(({ id }: { id: string }) => id));
  const names = Object.keys(partsOf(archive)).filter((name) => /\/(rig|type|draft)\.json$/.test(name));
  for (const name of names.sort()) {
    const about = jsonOf(archive, name);
    ids.push(about.id);
    if (about.startedFrom) ids.push(about.startedFrom.rigId, about.startedFrom.crewId);
    for (const each of [...(about.handovers ?? []), ...(about.proposals ?? [])]) ids.push(each.id);
  }
  const renamed = (text: string) => ids.reduce((now, id, nth) => now.replaceAll(`"${id}"`, `"thing ${nth}"`), text);
  return Object.fromEntries(
    Object.entries(lasting(archive)).map(([name, text]) => [name, name.endsWith('.json') ? renamed(text) : text]),
  );
}
