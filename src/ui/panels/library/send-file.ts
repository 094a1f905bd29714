import { CAPS } from '#wire/caps.ts';
import { type FileTaken, typeUploadPath } from '#wire/library.ts';
import { gdtfRefusalSentence } from '#words/gdtf.ts';
import { UPLOAD_WORDS } from '#words/library.ts';
import { UNREACHABLE } from '#words/screens.ts';
import type { Said } from '../../kit/message.tsx';

/** What became of a file: taken, or why not. */
export type FileAnswer = { readonly taken: FileTaken } | { readonly refused: Said };

/** Sends one file to a crew's library. */
export async function sendFile(crewId: string, file: File): Promise<FileAnswer> {
  if (file.size > CAPS.typeFile) return { refused: { what: tooLarge(file.size) } };
  const bytes = await bytesOf(file);
  if (bytes === undefined) return { refused: { what: UPLOAD_WORDS.unreadable } };
  const response = await post(`${typeUploadPath(crewId)}?name=${encodeURIComponent(file.name)}`, bytes);
  if (response === undefined) return { refused: UNREACHABLE };
  const body: unknown = await response.json().catch(() => null);
  if (response.ok && isTaken(body)) return { taken: body };
  return { refused: { what: sentenceOf(body) ?? UNREACHABLE.what } };
}

/** Said here: a server that is sent too much hangs up before it can say so. */
const tooLarge = (bytes: number) => gdtfRefusalSentence({ code: 'archive-too-large', bytes, limit: CAPS.typeFile });

async function bytesOf(file: File): Promise<ArrayBuffer | undefined> {
  try {
    return await file.arrayBuffer();
  } catch (error) {
    // The file went away, or is a folder: the browser cannot read it.
    if (error instanceof DOMException) return undefined;
    throw error;
  }
}

/** The answer, or undefined when there is none. */
async function post(path: string, body: ArrayBuffer): Promise<Response | undefined> {
  try {
    return await fetch(path, { method: 'POST', headers: { 'content-type': 'application/octet-stream' }, body });
  } catch (error) {
    if (error instanceof TypeError) return undefined; // how fetch says that the network failed
    throw error;
  }
}

/** An answer of our own server, and not of something on the way. */
const isTaken = (body: unknown): body is FileTaken =>
  typeof body === 'object' && body !== null && 'outcome' in body && 'report' in body && 'type' in body;

function sentenceOf(body: unknown): string | undefined {
  const message = typeof body === 'object' && body !== null && 'message' in body ? body.message : undefined;
  return typeof message === 'string' ? message : undefined;
}
