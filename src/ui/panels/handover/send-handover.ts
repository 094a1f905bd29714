import { handoverFileName } from '#exchange/handover/file-name.ts';
import { CAPS } from '#wire/caps.ts';
import {
  type HandoverFileLook,
  handoverFileLookPath,
  handoverFilePath,
  handoverFileTakePath,
  type ReceiveFile,
} from '#wire/handovers.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { RECEIVE_WORDS } from '#words/handovers.ts';
import { UNREACHABLE } from '#words/screens.ts';
import { RefusedRequest } from '../../kit/data/unreachable.ts';
import { sentenceIn } from '../../kit/data/use-revision.ts';
import { saveFile } from '../../kit/save-file.ts';

/** Has a revision written as a file and gives it to the browser to save; answers its name. */
export async function saveHandover(rig: RigSummary, number: number, words: string): Promise<string> {
  const body = JSON.stringify({ words });
  const response = await post(handoverFilePath(rig.id, number), 'application/json', body);
  const name = handoverFileName(rig.name, number);
  saveFile(name, 'application/zip', [await response.arrayBuffer()]);
  return name;
}

/** What a file brings; nothing is kept of it. */
export async function lookAtHandover(crewId: string, file: File): Promise<HandoverFileLook> {
  const response = await post(handoverFileLookPath(crewId), 'application/octet-stream', await bytesOf(file));
  return response.json();
}

/** Makes a rig of the crew of a file. */
export async function takeHandover(crewId: string, file: File, rig: ReceiveFile): Promise<RigSummary> {
  const query = new URLSearchParams({ name: rig.name, kind: rig.kind });
  if (rig.venueId !== null) query.set('venueId', rig.venueId);
  const path = `${handoverFileTakePath(crewId)}?${query}`;
  return (await post(path, 'application/octet-stream', await bytesOf(file))).json();
}

async function bytesOf(file: File): Promise<ArrayBuffer> {
  // Said here: a server that is sent too much hangs up before it can say so.
  if (file.size > CAPS.handoverFile) throw new RefusedRequest(RECEIVE_WORDS.tooLarge);
  try {
    return await file.arrayBuffer();
  } catch (error) {
    // The file went away, or is a folder: the browser cannot read it.
    if (error instanceof DOMException) throw new RefusedRequest(RECEIVE_WORDS.unreadable);
    throw error;
  }
}

async function post(path: string, type: string, body: string | ArrayBuffer): Promise<Response> {
  const response = await fetch(path, { method: 'POST', headers: { 'content-type': type }, body });
  if (response.ok) return response;
  throw new RefusedRequest(sentenceIn(await response.text()) ?? UNREACHABLE.what);
}
