import { useMemo, useState, useSyncExternalStore } from 'react';
import { getRow } from '#base/table.ts';
import { PERSON_FIELDS } from '#engine/model/field.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { unitName } from '#words/findings.ts';
import { HISTORY_WORDS as words } from '#words/history.ts';
import { KIT_WORDS, sayDay } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { Message } from '../../kit/message.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { useCalmRig } from '../../live/use-calm-rig.ts';
import { type Asked, filterOf } from './asked-history.ts';
import { HistoryFilterBar } from './history-filter.tsx';
import type { HistoryPlace } from './history-place.ts';
import { StepList } from './step-list.tsx';
import { useHistory, usePeople } from './use-history.ts';

export interface TimelineProps {
  readonly store: RigStore;
  readonly rig: RigSummary;
  readonly place: HistoryPlace;
  readonly onGo: (place: HistoryPlace) => void;
  readonly onSaid: (text: string) => void;
}

/** What was done to a rig, the newest first, and what of it is asked for. */
export function Timeline({ store, rig, place, onGo, onSaid }: TimelineProps) {
  const now = useCalmRig(store);
  const writable = useSyncExternalStore(store.subscribeLink, store.canEdit);
  const [typed, setTyped] = useState<Asked>({ unit: '', field: '', person: '', from: '', to: '' });
  const asked = useMemo(() => askedAt(place, typed, now), [place, typed, now]);
  const typedFilter = useMemo(() => filterOf(now, asked), [now, asked]);
  // A unit that the address names is meant whatever it is called, also when it is gone.
  const filter = place.unit === null ? typedFilter : { ...typedFilter, unit: place.unit, named: null };
  const { steps, unknownUntil, error, more, old, renew } = useHistory(store, rig.id, filter);
  const people = usePeople(rig.id);
  const ask = (next: Asked) => {
    setTyped(next);
    if (place.unit !== null || place.field !== null) onGo({ unit: null, field: null, moment: null });
  };
  return (
    <>
      <p className="max-w-prose text-soft">{words.about}</p>
      <HistoryFilterBar rig={now} people={people} asked={asked} onAsk={ask} />
      {unknownUntil === null ? null : (
        <Message severity="note" said={{ what: words.unknownUntil(sayDay(unknownUntil)) }} />
      )}
      {old ? <LinkButton onClick={renew}>{words.newer}</LinkButton> : null}
      {error === null ? null : <Message severity="blocker" said={saidOf(error)} />}
      {steps === undefined ? (
        error === null ? (
          <p className="text-soft">{KIT_WORDS.loading}</p>
        ) : null
      ) : steps.length === 0 ? (
        <p>{isAll(asked, place) ? words.none : words.noneFound}</p>
      ) : (
        <StepList
          store={store}
          rig={rig}
          filter={filter}
          steps={steps}
          writable={writable}
          onMoment={(moment) => onGo({ ...place, moment })}
          onSaid={onSaid}
        />
      )}
      {more === undefined ? null : (
        <div>
          <Button onClick={more}>{words.more}</Button>
        </div>
      )}
    </>
  );
}

/** What is asked for as the fields show it: what the address names, or what was typed. */
function askedAt({ unit, field }: HistoryPlace, typed: Asked, rig: ReturnType<RigStore['rig']>): Asked {
  const row = unit === null ? undefined : getRow(rig.fixtures, unit);
  return {
    ...typed,
    ...(unit === null ? {} : { unit: unitName(row) }),
    ...(field === null ? {} : { field: PERSON_FIELDS.find((each) => each === field) ?? '' }),
  };
}

const isAll = (asked: Asked, place: HistoryPlace) =>
  place.unit === null && Object.values(asked).every((value) => value === '');
