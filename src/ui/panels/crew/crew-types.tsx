import { LIBRARY_WORDS } from '#words/library.ts';
import { TextLink } from '../../kit/text-link.tsx';
import { libraryPath } from '../library/library-address.ts';
import { Part } from '../part.tsx';

/** The way to the crew's fixture library. */
export function CrewTypes({ crewId }: { readonly crewId: string }) {
  return (
    <Part title={LIBRARY_WORDS.title}>
      <p className="flex min-h-row flex-wrap items-center gap-x-4 px-2 py-1">
        <span>{LIBRARY_WORDS.crewAbout}</span>
        <TextLink href={libraryPath(crewId)}>{LIBRARY_WORDS.open}</TextLink>
      </p>
    </Part>
  );
}
