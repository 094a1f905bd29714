import { useMemo } from 'react';
import {
  countStates,
  placeLines,
  type RestoreLine,
  type RestorePlace,
  type RestoreSheet,
  type RestoreUnit,
} from '#engine/diff/restore.ts';
import { unitOfTask } from '#engine/diff/task-groups.ts';
import { unitAbout, unitNumber } from '#words/compare.ts';
import { leftWords, RESTORE_WORDS as words } from '#words/restore.ts';
import { ShowMore, useShown } from '../../print/show-more.tsx';
import { firstUnits } from '../compare/first-units.ts';
import { Part } from '../part.tsx';
import { LineRow, type LineRowProps } from './line-row.tsx';
import { moveByArrow } from './move-by-arrow.ts';

export interface RestoreListProps extends Pick<LineRowProps, 'writable' | 'onTick'> {
  readonly sheet: RestoreSheet;
  readonly isShown: (line: RestoreLine) => boolean;
}

/** What to put back, position by position and unit by unit, then what is at no unit, and last what is on paper only. */
export function RestoreList({ sheet, isShown, ...rest }: RestoreListProps) {
  const places = useMemo(() => shownPlaces(sheet.places, isShown), [sheet, isShown]);
  const all = places.reduce((sum, { units }) => sum + units.length, 0);
  const { shown, onMore } = useShown(all);
  const rig = sheet.rig.filter(isShown);
  const paper = sheet.paper.filter(isShown);
  const none = all + rig.length + paper.length === 0;
  return (
    // Its keys go between the buttons in it, which are what is pressed.
    // biome-ignore lint/a11y/noStaticElementInteractions: nothing here is pressed but buttons.
    <div className="flex flex-col gap-6" onKeyDown={moveByArrow}>
      {none ? <p className="text-large">{words.nothingShown}</p> : null}
      {firstUnits(places, shown).map((place) => (
        <PlacePart
          key={place.id}
          place={place}
          whole={sheet.places.find(({ id }) => id === place.id) ?? place}
          {...rest}
        />
      ))}
      <ShowMore shown={shown} all={all} onMore={onMore} />
      <LinesPart title={words.rig} lines={rig} whole={sheet.rig} {...rest} />
      <LinesPart title={words.paper} about={words.paperAbout} lines={paper} whole={sheet.paper} {...rest} />
    </div>
  );
}

function shownPlaces(
  places: readonly RestorePlace[],
  isShown: (line: RestoreLine) => boolean,
): readonly RestorePlace[] {
  return places.flatMap((place) => {
    const units = place.units.flatMap(({ id, lines }) => {
      const some = lines.filter(isShown);
      return some.length === 0 ? [] : [{ id, lines: some }];
    });
    return units.length === 0 ? [] : [{ ...place, units }];
  });
}

type Rest = Pick<LineRowProps, 'writable' | 'onTick'>;

function PlacePart({ place, whole, ...rest }: Rest & { readonly place: RestorePlace; readonly whole: RestorePlace }) {
  const lines = placeLines(whole);
  const title = place.position.trim() === '' ? words.noPosition : place.position;
  return (
    <Part title={title} about={leftWords(countStates(lines).open, lines.length)}>
      <ul>
        {place.units.map((unit) => (
          <UnitLines key={unit.id} unit={unit} {...rest} />
        ))}
      </ul>
    </Part>
  );
}

function UnitLines({ unit: { lines }, ...rest }: Rest & { readonly unit: RestoreUnit }) {
  const unit = lines[0] === undefined ? undefined : unitOfTask(lines[0].task);
  if (unit === undefined) return null;
  return (
    <li className="grid grid-cols-[minmax(6rem,1fr)_minmax(0,5fr)] gap-x-4 border-b border-rule py-1.5 max-sm:grid-cols-1">
      <div className="[overflow-wrap:anywhere]">
        <span className="text-name font-semibold tabular-nums">{unitNumber(unit)}</span>{' '}
        <span className="text-soft">{unitAbout(unit)}</span>
      </div>
      <ul>
        {lines.map((line) => (
          <LineRow key={line.key} line={line} names="nothing" {...rest} />
        ))}
      </ul>
    </li>
  );
}

interface LinesPartProps extends Rest {
  readonly title: string;
  readonly about?: string;
  readonly lines: readonly RestoreLine[];
  /** All of them, shown or not. */
  readonly whole: readonly RestoreLine[];
}

function LinesPart({ title, about, lines, whole, ...rest }: LinesPartProps) {
  if (lines.length === 0) return null;
  const left = leftWords(countStates(whole).open, whole.length);
  return (
    <Part title={title} about={about === undefined ? left : `${about} ${left}.`}>
      <ul className="divide-y divide-rule">
        {lines.map((line) => (
          <LineRow key={line.key} line={line} names="unit" {...rest} />
        ))}
      </ul>
    </Part>
  );
}
