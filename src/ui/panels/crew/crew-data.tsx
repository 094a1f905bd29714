import { archivePath } from '#wire/crew-archive.ts';
import { ARCHIVE_WORDS } from '#words/archive.ts';
import { AUDIT_WORDS } from '#words/audit.ts';
import { LINK_CLASSES, TextLink } from '../../kit/text-link.tsx';
import { auditPath } from '../audit/audit-address.ts';
import { Part } from '../part.tsx';

/** The way to the audit, and to everything of the crew in one file; for leads. */
export function CrewData({ crewId }: { readonly crewId: string }) {
  return (
    <>
      <Part title={AUDIT_WORDS.title}>
        <p className="flex min-h-row flex-wrap items-center gap-x-4 px-2 py-1">
          <span>{AUDIT_WORDS.crewAbout}</span>
          <TextLink href={auditPath(crewId)}>{AUDIT_WORDS.link}</TextLink>
        </p>
      </Part>
      <Part title={ARCHIVE_WORDS.title}>
        <p className="flex min-h-row flex-wrap items-center gap-x-4 px-2 py-1">
          <span className="max-w-prose">{ARCHIVE_WORDS.about}</span>
          {/* Not a page of ours: the browser asks the server and saves the answer. */}
          <a href={archivePath(crewId)} download className={LINK_CLASSES}>
            {ARCHIVE_WORDS.out}
          </a>
        </p>
      </Part>
    </>
  );
}
