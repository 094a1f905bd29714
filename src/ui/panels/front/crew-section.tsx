import { FRONT_WORDS } from '#words/front.ts';
import { LIBRARY_WORDS } from '#words/library.ts';
import { RIG_KIND_WORDS, ROLE_WORDS, sayMoment } from '#words/screens.ts';
import { TextLink } from '../../kit/text-link.tsx';
import { libraryPath } from '../library/library-address.ts';
import type { CrewGroup, VenueGroup } from './group-rigs.ts';

/** One crew's rigs under its name, as on a sheet. */
export function CrewSection({ crew }: { readonly crew: CrewGroup }) {
  return (
    <section aria-labelledby={`crew-${crew.id}`}>
      <div className="flex flex-wrap items-baseline gap-x-4 border-b border-ink pb-1">
        <h3 id={`crew-${crew.id}`} className="text-name">
          {crew.name}
        </h3>
        {crew.members === undefined ? null : (
          <span className="text-soft">{FRONT_WORDS.crewAbout(ROLE_WORDS[crew.role].name, crew.members)}</span>
        )}
        <span className="ml-auto flex flex-wrap gap-x-4">
          <TextLink href={libraryPath(crew.id)} aria-label={`${crew.name}: ${LIBRARY_WORDS.link}`}>
            {LIBRARY_WORDS.link}
          </TextLink>
          <TextLink href={`/crews/${crew.id}`} aria-label={`${crew.name}: ${FRONT_WORDS.crewLink}`}>
            {FRONT_WORDS.crewLink}
          </TextLink>
        </span>
      </div>
      {crew.venues.length === 0 ? <p className="py-2 text-soft">{FRONT_WORDS.noRigs}</p> : null}
      {crew.venues.map((venue) => (
        <VenueRigs key={venue.id ?? ''} venue={venue} />
      ))}
    </section>
  );
}

function VenueRigs({ venue }: { readonly venue: VenueGroup }) {
  return (
    <div className="pt-3">
      <h4 className="text-soft">{venue.name ?? FRONT_WORDS.noVenue}</h4>
      <ul>
        {venue.rigs.map((rig) => (
          <li key={rig.id} className="flex min-h-row flex-wrap items-baseline gap-x-4 border-b border-rule py-1">
            <TextLink href={`/rigs/${rig.id}`} className="font-serif text-large">
              {rig.name}
            </TextLink>
            <span className="text-soft">{RIG_KIND_WORDS[rig.kind]}</span>
            <span className="ml-auto text-soft">{FRONT_WORDS.changed(sayMoment(rig.changedAt))}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
