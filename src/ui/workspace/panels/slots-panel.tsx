import { SLOT_CARD_WORDS } from '#words/slots.ts';
import { moveSelection } from '../../grid/selection.ts';
import type { Sheet } from '../../grid/sheet.ts';
import { useSheet } from '../../grid/use-sheet.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { ToHistory } from '../../panels/rig/to-history.tsx';
import { SlotCard } from '../../universes/slot-card.tsx';
import { Panel } from '../panel.tsx';

export interface SlotsPanelProps {
  readonly sheet: Sheet;
  readonly onClose: () => void;
}

/** What the slots of the unit do whose row one is in; it follows the row. */
export function SlotsPanel({ sheet, onClose }: SlotsPanelProps) {
  const row = useSheet(sheet, (state) => state.selection?.cursor.row);
  const column = useSheet(sheet, (state) => state.selection?.cursor.column);
  const go = (lines: 1 | -1) => {
    const { selection } = sheet.state();
    if (selection) sheet.select(moveSelection(sheet.ground(), selection, { lines, columns: 0, how: 'go' }));
  };
  return (
    <Panel title={SLOT_CARD_WORDS.title} onClose={onClose}>
      {row === undefined ? (
        <p>{SLOT_CARD_WORDS.none}</p>
      ) : (
        <SlotCard
          store={sheet.store}
          id={row}
          steps={
            <>
              <LinkButton onClick={() => go(-1)}>{SLOT_CARD_WORDS.previous}</LinkButton>
              <LinkButton onClick={() => go(1)}>{SLOT_CARD_WORDS.next}</LinkButton>
              {column === undefined || column === 'footprint' ? null : <ToHistory unit={row} field={column} />}
            </>
          }
        />
      )}
    </Panel>
  );
}
