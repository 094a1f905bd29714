import { useSearchParams } from 'next/navigation';
import { useMemo } from 'react';
import type { FixtureType, TypeMode } from '#engine/model/fixture-type.ts';
import { footprintsOfMode } from '#engine/type/slots-of.ts';
import { modeChart } from '#engine/type/type-chart.ts';
import { modeWord, TYPE_WORDS } from '#words/library.ts';
import { MenuLine } from '../../kit/menu-line.tsx';
import { Part } from '../part.tsx';
import { SlotChart } from './slot-chart.tsx';

const pathOf = (at: number) => `?mode=${at + 1}`;

/** The modes of a type as a line of words; below it the slot chart of the one that was chosen. */
export function ModesPart({ type }: { readonly type: FixtureType }) {
  const asked = Number(useSearchParams().get('mode') ?? 1) - 1;
  const at = type.modes[asked] === undefined ? 0 : asked;
  const mode = type.modes[at];
  const words = useMemo(
    () =>
      type.modes.map((each, place) => {
        const { name, firmware } = each;
        return { label: modeWord({ name, firmware, footprints: footprintsOfMode(type, each) }), href: pathOf(place) };
      }),
    [type],
  );
  return (
    <Part title={TYPE_WORDS.modes}>
      <MenuLine name={TYPE_WORDS.modesNav} words={words} current={pathOf(at)} />
      {mode === undefined ? null : <Mode type={type} mode={mode} />}
    </Part>
  );
}

function Mode({ type, mode }: { readonly type: FixtureType; readonly mode: TypeMode }) {
  const chart = useMemo(() => modeChart(type, mode), [type, mode]);
  const about = [
    mode.firmware.length === 0 ? TYPE_WORDS.allFirmware : TYPE_WORDS.firmware(mode.firmware),
    ...(chart.virtual === 0 ? [] : [TYPE_WORDS.virtual(chart.virtual)]),
  ];
  return (
    <div className="flex flex-col gap-2 pt-2">
      {mode.description === '' ? null : <p className="max-w-prose whitespace-pre-line">{mode.description}</p>}
      <p className="text-soft">{about.join(' · ')}</p>
      <SlotChart mode={mode.name} chart={chart} />
    </div>
  );
}
