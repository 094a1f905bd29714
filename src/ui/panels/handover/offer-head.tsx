import type { OfferedRevision } from '#wire/handovers.ts';
import { RECEIVE_WORDS as words } from '#words/handovers.ts';

/** Who gives what, and what they say with it. */
export function OfferHead({ offer }: { readonly offer: OfferedRevision }) {
  return (
    <div className="flex max-w-prose flex-col gap-2 [overflow-wrap:anywhere]">
      <h2 className="font-serif text-title">{words.offer(offer)}</h2>
      <p className="text-large">{words.rig(offer)}</p>
      {offer.words === '' ? (
        <p className="text-soft">{words.noWords}</p>
      ) : (
        <blockquote className="border-l-2 border-ink pl-3 font-serif text-large whitespace-pre-wrap">
          {offer.words}
        </blockquote>
      )}
      <p className="text-soft">{words.from(offer)}</p>
    </div>
  );
}
