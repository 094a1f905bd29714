import { useMemo, useSyncExternalStore } from 'react';
import { getRow } from '#base/table.ts';
import { SLOTS, type Universe, universeOf } from '#engine/model/address.ts';
import { NETWORK_WORDS } from '#words/network.ts';
import { EMPTY_WORDS } from '#words/sheet.ts';
import { universeChoice, UNIVERSE_PAGE_WORDS as words } from '#words/slots.ts';
import { BareSelect } from '../../kit/select.tsx';
import { StayLink } from '../../kit/stay-link.tsx';
import { LINK_CLASSES } from '../../kit/text-link.tsx';
import { chosenUnits } from '../../live/chosen-units.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { useCalmRig } from '../../live/use-calm-rig.ts';
import { PHONE, useMedia } from '../../workspace/use-media.ts';
import { universeAnchor } from '../network/universe-anchor.ts';
import { rigPath } from '../rig/rig-address.ts';
import { RibbonsView } from './ribbons-view.tsx';
import { universeChoices } from './universe-choices.ts';
import { UniverseList } from './universe-list.tsx';
import { UniverseView } from './universe-view.tsx';
import { useUniversesPlace } from './universes-hash.ts';
import { ViewChoice } from './view-choice.tsx';

export interface UniversesProps {
  readonly store: RigStore;
  readonly rigId: string;
}

/** Every universe of an open rig to choose from, and the chosen one slot by slot. */
export function Universes({ store, rigId }: UniversesProps) {
  const rig = useCalmRig(store);
  const arrived = useSyncExternalStore(store.subscribeLink, store.hasArrived);
  const phone = useMedia(PHONE);
  const [place, goTo] = useUniversesPlace();
  const wanted = place.universe ?? universeOfUnit(store);
  const choices = useMemo(() => universeChoices(rig, store.occupancy(), store.findings()), [rig, store]);
  const at = Math.max(
    0,
    choices.findIndex(({ universe }) => universe === wanted),
  );
  const chosen = choices[at];
  if (chosen === undefined) {
    return <p className="max-w-prose px-5 py-4">{arrived ? words.none : EMPTY_WORDS.arriving}</p>;
  }
  const { universe, label } = chosen;
  const choose = (to: Universe) => goTo({ view: 'slots', universe: to });
  const views = (
    <ViewChoice
      view={place.view}
      onChoose={(view) => goTo({ view, universe: view === 'all' ? undefined : universe })}
    />
  );
  if (place.view === 'all') {
    return <RibbonsView store={store} rigId={rigId} rig={rig} choices={choices} views={views} onSlots={choose} />;
  }
  return (
    <div className="flex min-h-0 flex-1">
      {phone ? null : <UniverseList choices={choices} at={at} onChoose={choose} />}
      <div className="flex min-w-0 flex-1 flex-col">
        <div className="flex flex-wrap items-baseline gap-x-4 gap-y-1 px-4 pt-2 sm:px-5">
          <h2 className={phone ? 'sr-only' : 'text-title'}>{words.heading(universe)}</h2>
          {phone ? (
            <div className="w-full">
              <BareSelect
                name={words.choose}
                choices={choices.map((each) => ({
                  value: String(each.universe),
                  label: universeChoice(each.universe, each.label, each.freeSlots, SLOTS),
                }))}
                value={String(universe)}
                onChoose={(value) => choose(Number(value) as Universe)}
              />
            </div>
          ) : (
            <p className="font-serif text-name">{label}</p>
          )}
          {views}
          <StayLink className={LINK_CLASSES} href={`${rigPath(rigId, 'network')}#${universeAnchor(universe)}`}>
            {NETWORK_WORDS.toNetwork}
          </StayLink>
          {/* Not a page of ours: the browser asks the server and saves the answer. */}
          <a
            className={`${LINK_CLASSES} ml-auto max-sm:ml-0`}
            href={`/api/rigs/${rigId}/sheets/universe-slots.csv`}
            download
          >
            {words.csv}
          </a>
        </div>
        <UniverseView key={universe} store={store} rigId={rigId} rig={rig} universe={universe} />
      </div>
    </div>
  );
}

/** The universe of the unit one was at last, on this page or another. */
function universeOfUnit(store: RigStore): Universe | undefined {
  const [id] = chosenUnits(store).ids();
  const start = id === undefined ? undefined : getRow(store.rig().fixtures, id)?.addresses.find((at) => at !== null);
  return start === undefined || start === null ? undefined : universeOf(start);
}
