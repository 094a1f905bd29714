import { CAPS } from '#wire/caps.ts';
import { ARCHIVE_IN_PATH, type ArchiveTaken } from '#wire/crew-archive.ts';
import { archiveSentence } from '#words/archive.ts';
import { UNREACHABLE } from '#words/screens.ts';
import type { Said } from '../../kit/message.tsx';

/** What became of an archive: a crew, or why not. */
export type ArchiveAnswer = { readonly taken: ArchiveTaken } | { readonly refused: Said };

/** Sends an archive, and says as it goes how much of it is through, from 0 to 1. */
export function sendArchive(file: File, onProgress: (part: number) => void): Promise<ArchiveAnswer> {
  const { size } = file;
  if (size > CAPS.archiveFile) {
    const tooLarge = { code: 'archive-too-large', bytes: size, limit: CAPS.archiveFile } as const;
    return Promise.resolve({ refused: { what: archiveSentence(tooLarge) } });
  }
  return new Promise((resolve) => {
    // `fetch` does not say how much has been sent.
    const request = new XMLHttpRequest();
    request.upload.onprogress = ({ loaded, total }) => onProgress(total === 0 ? 1 : loaded / total);
    request.onload = () => resolve(answerOf(request.status, request.responseText));
    request.onerror = () => resolve({ refused: UNREACHABLE });
    request.open('POST', ARCHIVE_IN_PATH);
    request.setRequestHeader('content-type', 'application/octet-stream');
    request.send(file);
  });
}

function answerOf(status: number, text: string): ArchiveAnswer {
  const body = parsed(text);
  if (status === 200 && isTaken(body)) return { taken: body };
  const message = typeof body === 'object' && body !== null && 'message' in body ? body.message : undefined;
  return { refused: typeof message === 'string' ? { what: message } : UNREACHABLE };
}

/** An answer of our own server, and not of something on the way. */
const isTaken = (body: unknown): body is ArchiveTaken =>
  typeof body === 'object' && body !== null && 'crewId' in body && 'crewName' in body;

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    // Something on the way answered in our server's place: it is told as no answer.
    return undefined;
  }
}
