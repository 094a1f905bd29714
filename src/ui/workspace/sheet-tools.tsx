import { type RefObject, useSyncExternalStore } from 'react';
import type { Severity } from '#engine/model/finding.ts';
import { GROUPING_WORDS, SHEET_WORDS } from '#words/sheet.ts';
import type { PanelName, Sheet } from '../grid/sheet.ts';
import { addRow, takeBack } from '../grid/sheet-actions.ts';
import { useSheet } from '../grid/use-sheet.ts';
import { LinkButton } from '../kit/link-button.tsx';
import type { Grouping } from '../live/rows/view.ts';
import { isFiltered } from '../live/rows/view.ts';
import { FindField } from './find-field.tsx';
import { Tally } from './tally.tsx';
import { PHONE, useMedia } from './use-media.ts';

export interface SheetToolsProps {
  readonly sheet: Sheet;
  readonly find: RefObject<HTMLInputElement | null>;
  readonly onJump: (severity: Severity) => void;
  readonly onLeave: () => void;
}

const PANELS = [
  'findings',
  'slots',
  'filter',
  'columns',
  'plans',
  'types',
  'firmware',
  'hazards',
  'positions',
  'loads',
  'upkeep',
  'notes',
  'keys',
] as const;
/** On a phone there are no columns and no keys, and one unit is selected at a time. */
const ON_A_PHONE: readonly PanelName[] = [
  'findings',
  'slots',
  'filter',
  'types',
  'firmware',
  'hazards',
  'positions',
  'loads',
  'upkeep',
  'notes',
];

/** The line over the sheet: find, the tally of findings, and words for everything else. */
export function SheetTools({ sheet, find, onJump, onLeave }: SheetToolsProps) {
  const phone = useMedia(PHONE);
  const words = (
    <div
      role="toolbar"
      aria-label={SHEET_WORDS.tools}
      className="ml-auto flex flex-wrap items-center gap-x-3.5 max-sm:ml-0"
    >
      <Steps sheet={sheet} />
      <GroupBy sheet={sheet} />
      {(phone ? ON_A_PHONE : PANELS).map((panel) => (
        <PanelWord key={panel} sheet={sheet} panel={panel} />
      ))}
    </div>
  );
  return (
    <div className="flex flex-wrap items-center gap-x-5 gap-y-1 border-b border-rule-strong px-4 py-1 sm:px-5">
      <FindField sheet={sheet} field={find} onLeave={onLeave} />
      <Tally sheet={sheet} onJump={onJump} />
      {phone ? (
        <details className="w-full">
          <summary className="flex min-h-control cursor-pointer items-center underline decoration-edge underline-offset-[0.2em]">
            {SHEET_WORDS.tools}
          </summary>
          {words}
        </details>
      ) : (
        words
      )}
    </div>
  );
}

function PanelWord({ sheet, panel }: { readonly sheet: Sheet; readonly panel: PanelName }) {
  const open = useSheet(sheet, (state) => state.panel) === panel;
  const filtered = useSheet(sheet, (state) => isFiltered(state.view.filter));
  const on = panel === 'filter' && filtered;
  return (
    <LinkButton
      aria-expanded={open}
      className={on ? 'font-semibold' : ''}
      onClick={() => sheet.set({ panel: open ? undefined : panel })}
    >
      {on ? SHEET_WORDS.filterOn : SHEET_WORDS[panel]}
    </LinkButton>
  );
}

function Steps({ sheet }: { readonly sheet: Sheet }) {
  const { store } = sheet;
  const undo = useSyncExternalStore(store.subscribeHistory, store.nextUndo);
  const redo = useSyncExternalStore(store.subscribeHistory, store.nextRedo);
  const writable = useSyncExternalStore(store.subscribeLink, store.canEdit);
  if (!writable) return null;
  return (
    <>
      <LinkButton onClick={() => addRow(sheet)}>{SHEET_WORDS.addRow}</LinkButton>
      <LinkButton disabled={undo === undefined} onClick={() => takeBack(sheet, 'undo')}>
        {SHEET_WORDS.undo}
      </LinkButton>
      {redo === undefined ? null : <LinkButton onClick={() => takeBack(sheet, 'redo')}>{SHEET_WORDS.redo}</LinkButton>}
    </>
  );
}

const GROUPINGS: readonly Grouping[] = ['position', 'universe', 'none'];

function GroupBy({ sheet }: { readonly sheet: Sheet }) {
  const view = useSheet(sheet, (state) => state.view);
  return (
    <label className="inline-flex items-center gap-1">
      <span className="text-soft">{GROUPING_WORDS.label}</span>
      <select
        className="min-h-control rounded-control border border-edge bg-sheet px-1"
        value={view.grouping}
        onChange={(event) => {
          const grouping = GROUPINGS.find((each) => each === event.currentTarget.value);
          if (grouping) sheet.setView({ ...view, grouping });
        }}
      >
        {GROUPINGS.map((grouping) => (
          <option key={grouping} value={grouping}>
            {GROUPING_WORDS[grouping]}
          </option>
        ))}
      </select>
    </label>
  );
}
