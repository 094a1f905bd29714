import { UPKEEP_WORDS as words } from '#words/upkeep.ts';
import type { Sheet } from '../../grid/sheet.ts';
import { useSheet } from '../../grid/use-sheet.ts';
import { StayLink } from '../../kit/stay-link.tsx';
import { LINK_CLASSES } from '../../kit/text-link.tsx';
import { rigAddress, rigPath } from '../../panels/rig/rig-address.ts';
import { UnitUpkeep } from '../../upkeep/unit-upkeep.tsx';
import { Panel } from '../panel.tsx';

export interface UpkeepPanelProps {
  readonly sheet: Sheet;
  readonly onClose: () => void;
}

/** Faults, swaps and readings of the unit whose row one is in; it follows the row. */
export function UpkeepPanel({ sheet, onClose }: UpkeepPanelProps) {
  const row = useSheet(sheet, (state) => state.selection?.cursor.row);
  const { rigId } = rigAddress(window.location.pathname);
  return (
    <Panel title={words.title} onClose={onClose}>
      {row === undefined ? <p>{words.noUnit}</p> : <UnitUpkeep key={row} store={sheet.store} id={row} />}
      <StayLink className={LINK_CLASSES} href={rigPath(rigId, 'upkeep')}>
        {words.toPage}
      </StayLink>
    </Panel>
  );
}
