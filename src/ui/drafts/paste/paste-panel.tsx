import {
  type ClipboardEvent,
  type KeyboardEvent,
  useDeferredValue,
  useEffect,
  useId,
  useMemo,
  useRef,
  useState,
} from 'react';
import type { ChartReading, ChartRepeat } from '#engine/draft/chart-reading.ts';
import { readChart } from '#exchange/chart/read-chart.ts';
import { sayChartRefusal } from '#words/charts.ts';
import { PASTE_WORDS } from '#words/draft-screen.ts';
import { Button } from '../../kit/button.tsx';
import { CONTROL_CLASSES } from '../../kit/field-frame.tsx';
import { Message } from '../../kit/message.tsx';
import { carryOut } from '../chart/chart-actions.ts';
import { selectCell } from '../chart/chart-selection.ts';
import type { Desk } from '../desk.ts';
import { pasteEdits } from './paste-edits.ts';
import { PastePreview } from './paste-preview.tsx';

export interface PastePanelProps {
  readonly desk: Desk;
  readonly text: string;
  /** Called once a chart was taken in. */
  readonly onTaken: () => void;
}

/** A chart as text, and what it becomes while one looks. After a paste, Enter takes it. */
export function PastePanel({ desk, text: first, onTaken }: PastePanelProps) {
  const id = useId();
  const [text, setText] = useState(first);
  const [repeats, setRepeats] = useState<ReadonlySet<ChartRepeat>>(NONE);
  const [instead, setInstead] = useState(false);
  const take = useRef<HTMLButtonElement>(null);
  const [pastes, setPastes] = useState(first === '' ? 0 : 1);
  const shown = useDeferredValue(text);
  const reading = useMemo(() => (shown.trim() === '' ? undefined : readChart(shown)), [shown]);
  const chart = reading?.ok ? reading.value : undefined;
  const mode = desk.mode();
  const there = mode?.rows.length ?? 0;
  // Once the reading of what was pasted is there, Enter takes it.
  useEffect(() => {
    if (pastes > 0 && chart !== undefined) take.current?.focus();
  }, [pastes, chart]);

  const write = (next: string) => {
    setText(next);
    setRepeats(NONE);
  };
  const carry = () => {
    if (chart === undefined || chart.modes.length === 0) return;
    const choice = {
      mode: mode?.id,
      rows: instead ? 'instead' : 'below',
      repeats,
    } as const;
    const taken = pasteEdits(desk.store.reading().draft, chart, choice, desk.makeId);
    if (!carryOut(desk, taken.edits)) return;
    desk.chooseMode(taken.mode);
    const { rows, guesses } = taken;
    desk.set({ notice: { kind: 'taken', rows, modes: chart.modes.length, guesses } });
    const own = desk.mode()?.rows ?? [];
    const row = own.find((each) => each.attribute.endsWith('?')) ?? own[0];
    if (row) desk.select(selectCell({ row: row.id, column: 'attribute' }));
    onTaken();
  };
  return (
    <div className="flex flex-col gap-3">
      <div className="flex flex-col gap-1">
        <label htmlFor={id} className="font-medium">
          {PASTE_WORDS.label}
        </label>
        <p id={`${id}-hint`} className="text-small text-soft">
          {PASTE_WORDS.hint}
        </p>
        <textarea
          id={id}
          rows={chart === undefined ? 7 : 4}
          spellCheck={false}
          aria-describedby={`${id}-hint`}
          placeholder={PASTE_WORDS.placeholder}
          className={`${CONTROL_CLASSES} py-1 font-mono`}
          value={text}
          onChange={(event) => write(event.currentTarget.value)}
          onPaste={(event: ClipboardEvent) => {
            if (event.clipboardData.getData('text/plain').includes('\n')) setPastes(pastes + 1);
          }}
          onKeyDown={(event: KeyboardEvent) => {
            if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) carry();
          }}
        />
      </div>
      {reading !== undefined && !reading.ok ? (
        <Message severity="caution" said={sayChartRefusal(reading.error)} />
      ) : null}
      {chart === undefined ? null : (
        <>
          {there === 0 || chart.modes.length !== 1 ? null : (
            <label className="flex min-h-control items-center gap-2">
              <input type="checkbox" checked={instead} onChange={(event) => setInstead(event.currentTarget.checked)} />
              {PASTE_WORDS.instead(there)}
            </label>
          )}
          <TakeLine chart={chart} button={take} onTake={carry} />
          <PastePreview chart={chart} repeats={repeats} onRepeats={setRepeats} />
        </>
      )}
    </div>
  );
}

const NONE: ReadonlySet<ChartRepeat> = new Set();

interface TakeLineProps {
  readonly chart: ChartReading;
  readonly button: React.RefObject<HTMLButtonElement | null>;
  readonly onTake: () => void;
}

function TakeLine({ chart, button, onTake }: TakeLineProps) {
  const rows = chart.modes.flatMap((mode) => mode.rows);
  const guesses = rows.filter((row) => row.guess !== 'stated').length;
  const leftOut = chart.lines.filter(({ became }) => became.kind === 'left-out').length;
  if (rows.length === 0) return <Message severity="caution" said={{ what: PASTE_WORDS.nothing }} />;
  const about = [
    PASTE_WORDS.reading(chart.modes.length, rows.length),
    ...(guesses === 0 ? [] : [PASTE_WORDS.guesses(guesses)]),
    ...(leftOut === 0 ? [] : [PASTE_WORDS.leftOut(leftOut)]),
  ];
  return (
    <p className="flex flex-wrap items-center gap-x-4 gap-y-2">
      <Button ref={button} look="main" onClick={onTake}>
        {chart.modes.length === 1 ? PASTE_WORDS.take(rows.length) : PASTE_WORDS.takeModes(chart.modes.length)}
      </Button>
      <span role="status">{about.join(' · ')}</span>
    </p>
  );
}
