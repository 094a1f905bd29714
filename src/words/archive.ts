import type { ArchiveRefusal } from '#engine/type/file-refusal.ts';
import type { ArchiveFault } from '#wire/crew-archive.ts';

/** What an archive that was not brought in is told: which part it is about, and what to do next. */
export function archiveSentence(trouble: ArchiveRefusal | ArchiveFault): string {
  switch (trouble.code) {
    case 'no-manifest':
      return `This zip has no “manifest.json”, so it is no archive of a crew. ${NOTHING} Check that you chose the right file.`;
    case 'manifest-changed':
      return `The part “manifest.json” is not as it was written. ${NOTHING} ${AGAIN}`;
    case 'archive-newer':
      return `This archive is of format ${trouble.format}, and this installation reads format 1. ${NOTHING} Bring it into a newer installation.`;
    case 'part-missing':
      return `The part “${trouble.part}” is missing from the archive. ${NOTHING} ${AGAIN}`;
    case 'part-added':
      return `The archive has a part “${trouble.part}” that does not belong in it. ${NOTHING} ${AGAIN}`;
    case 'part-changed':
      return `The part “${trouble.part}” is not as it was written: it does not agree with its hash. ${NOTHING} ${AGAIN}`;
    case 'part-unreadable':
      return `What the part “${trouble.part}” says cannot be read. ${NOTHING} ${AGAIN}`;
    case 'not-an-archive':
      return `This file is no archive of a crew: that is a zip file. ${NOTHING} Check that you chose the right file.`;
    case 'archive-empty':
      return `This file is empty. ${NOTHING} ${AGAIN}`;
    case 'archive-truncated':
      return `This file ends too early. ${NOTHING} ${AGAIN}`;
    case 'archive-too-large':
      return `This file has ${mega(trouble.bytes)} MB; an archive has at most ${mega(trouble.limit)} MB. ${NOTHING} Check that you chose the right file.`;
    case 'archive-damaged':
      return trouble.entry === null
        ? `The list of parts in this file is damaged. ${NOTHING} ${AGAIN}`
        : `The part “${trouble.entry}” is damaged. ${NOTHING} ${AGAIN}`;
    case 'too-many-entries':
    case 'total-too-large':
    case 'archive-nested':
      return `This file unpacks to more than any archive of a crew holds. ${NOTHING} Check that you chose the right file.`;
    default:
      return `The part “${trouble.entry}” is nothing that Rigledger writes into an archive. ${NOTHING} Check that you chose the right file.`;
  }
}

const NOTHING = 'Nothing was brought in.';
const AGAIN = 'Get the file once more from where it was taken out.';
const mega = (bytes: number) => Math.ceil(bytes / 1e6).toLocaleString('en-GB');

export const ARCHIVE_WORDS = {
  title: 'All data of this crew',
  about:
    'One file with everything: rigs with their whole history, revisions, the library, who was a member, and the audit. No passwords and no e-mail addresses. Another installation can bring it in.',
  out: 'Take everything out',
  in: 'Bring in an archive…',
  inTitle: 'Bring in an archive',
  inAbout:
    'An archive that was taken out of a crew, here or elsewhere. It becomes a new crew with you as its lead; nothing else is changed.',
  choose: 'Archive, a .zip file',
  submit: 'Bring it in',
  sending: (percent: number) => `Sending: ${percent} %`,
  reading: 'The server checks it and writes it down. A large one takes a minute.',
  taken: (crew: string, rigs: string, types: string) => `${crew} is here, with ${rigs} and ${types}.`,
  open: 'To the crew',
  none: 'No file is chosen. Choose one.',
} as const;

/** `Saltwind Touring 2026-11-30.zip`, with what no file name may hold left out. */
export function archiveFileName(crew: string, at: number): string {
  const plain = crew
    .replace(/[\\/:*?"<>|\p{Cc}]/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  return `${plain} ${new Date(at).toISOString().slice(0, 10)}.zip`;
}
