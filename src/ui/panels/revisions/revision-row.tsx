import type { RigRevisionSummary } from '#wire/record.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { acceptedText, revisionFacts, shortHash, REVISIONS_WORDS as words } from '#words/revisions.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { Mark } from '../../kit/mark.tsx';
import { StayLink } from '../../kit/stay-link.tsx';
import { LINK_CLASSES } from '../../kit/text-link.tsx';
import { HandOver, OffersOf } from '../handover/handover-part.tsx';
import { spellPlace } from './revisions-hash.ts';

export interface RevisionRowProps {
  readonly rig: RigSummary;
  readonly revision: RigRevisionSummary;
  /** The number of the one before it; undefined for the first. */
  readonly previous: number | undefined;
  readonly onStart: () => void;
}

/** One revision in the list: its number to be seen from afar, what it is, and what can be done with it. */
export function RevisionRow({ rig, revision, previous, onStart }: RevisionRowProps) {
  const { number, note } = revision;
  const accepted = acceptedText(revision);
  return (
    <li className="grid grid-cols-[2.25rem_minmax(0,1fr)] gap-x-2 border-b border-rule py-3 [overflow-wrap:anywhere]">
      <span aria-hidden="true" className="font-serif text-title font-semibold tabular-nums">
        {number}
      </span>
      <div className="flex flex-col gap-1">
        <h3 className="text-large">
          <span className="sr-only">{words.revision(number)}: </span>
          {note === '' ? <span className="font-normal text-soft">{words.noNote}</span> : note}
        </h3>
        <p className="text-soft">
          {revisionFacts(revision)} · <Hash hash={revision.hash} />
        </p>
        {accepted === undefined ? null : (
          <p>
            <Mark severity="blocker" /> {accepted}
          </p>
        )}
        <div className="flex flex-wrap gap-x-5">
          <PlaceLink to={{ kind: 'one', number }} name={words.lookName(number)} word={words.look} />
          <PlaceLink
            to={{ kind: 'pair', before: number, after: 'now' }}
            name={words.withNowName(number)}
            word={words.withNow}
          />
          {previous === undefined ? null : (
            <PlaceLink
              to={{ kind: 'pair', before: previous, after: number }}
              name={words.withBeforeName(number, previous)}
              word={words.withBefore(previous)}
            />
          )}
          <LinkButton aria-label={words.startName(number)} onClick={onStart}>
            {words.start}
          </LinkButton>
          <HandOver rig={rig} number={number} />
        </div>
        <OffersOf rig={rig} number={number} />
      </div>
    </li>
  );
}

interface PlaceLinkProps {
  readonly to: Parameters<typeof spellPlace>[0];
  /** What a screen reader calls it, who does not see whose row it stands in. */
  readonly name: string;
  readonly word: string;
}

const PlaceLink = ({ to, name, word }: PlaceLinkProps) => (
  <StayLink className={LINK_CLASSES} href={spellPlace(to)} aria-label={name}>
    {word}
  </StayLink>
);

/** The first figures of a revision's hash: two people who read the same aloud have the same. */
export function Hash({ hash }: { readonly hash: string }) {
  return (
    <code title={hash} className="whitespace-nowrap text-ink">
      <span className="sr-only">{words.hash}: </span>
      {shortHash(hash)}
    </code>
  );
}
