import { useMemo } from 'react';
import { cellText } from '#engine/draft/cell-text.ts';
import type { DraftMode } from '#engine/draft/draft.ts';
import { openChart } from '#engine/draft/open-chart.ts';
import type { FixtureType, TypeMode } from '#engine/model/fixture-type.ts';
import { modeChart } from '#engine/type/type-chart.ts';
import { DRAFT_SCREEN_WORDS, lostLines } from '#words/draft-screen.ts';
import { Button } from '../../kit/button.tsx';
import { Dialog } from '../../kit/dialog.tsx';
import { SlotChart } from '../../panels/library/slot-chart.tsx';
import { carryOut } from '../chart/chart-actions.ts';
import type { Desk } from '../desk.ts';
import { useDesk, useWritable } from '../use-desk.ts';

export interface KeptModeProps {
  readonly desk: Desk;
  readonly mode: DraftMode;
}

/** A mode as the revision has it that the draft started from: looked at until its chart is opened. */
export function KeptMode({ desk, mode }: KeptModeProps) {
  const { base } = desk.store;
  const own = base?.modes.find((each) => cellText(each.name) === mode.kept);
  const writable = useWritable(desk.store);
  const asked = useDesk(desk, (state) => state.window?.kind === 'open-chart');
  if (base === null || own === undefined) return null;
  return (
    <section className="flex flex-col gap-2">
      <p className="flex flex-wrap items-center gap-x-4 gap-y-1">
        {DRAFT_SCREEN_WORDS.kept}
        {writable ? (
          <Button onClick={() => desk.set({ window: { kind: 'open-chart' } })}>{DRAFT_SCREEN_WORDS.openChart}</Button>
        ) : null}
      </p>
      <Chart type={base} mode={own} />
      {asked ? <OpenChart desk={desk} mode={mode} own={own} base={base} /> : null}
    </section>
  );
}

function Chart({ type, mode }: { readonly type: FixtureType; readonly mode: TypeMode }) {
  const chart = useMemo(() => modeChart(type, mode), [type, mode]);
  return <SlotChart mode={mode.name} chart={chart} />;
}

interface OpenChartProps extends KeptModeProps {
  readonly own: TypeMode;
  readonly base: FixtureType;
}

/** Says what a chart has no place for, before. */
function OpenChart({ desk, mode, own, base }: OpenChartProps) {
  const opened = useMemo(() => openChart(mode.id, own, base, desk.makeId), [mode.id, own, base, desk]);
  const lost = lostLines(opened.lost);
  const close = () => desk.set({ window: undefined });
  const answers = (
    <>
      <Button onClick={close}>{DRAFT_SCREEN_WORDS.leave}</Button>
      <Button
        look="main"
        onClick={() => {
          close();
          carryOut(desk, opened.edits);
        }}
      >
        {DRAFT_SCREEN_WORDS.openChart}
      </Button>
    </>
  );
  return (
    <Dialog title={DRAFT_SCREEN_WORDS.openChartTitle} onClose={close} answers={answers}>
      <p>{lost.length === 0 ? DRAFT_SCREEN_WORDS.openChartSame : DRAFT_SCREEN_WORDS.openChartLost}</p>
      {lost.length === 0 ? null : (
        <>
          <ul className="list-disc pl-5">
            {lost.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <p>{DRAFT_SCREEN_WORDS.openChartStays}</p>
        </>
      )}
    </Dialog>
  );
}
