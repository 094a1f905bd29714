import { unreachable } from '#base/unreachable.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { PanelName, Sheet } from '../grid/sheet.ts';
import { ColumnsPanel } from './panels/columns-panel.tsx';
import { FilterPanel } from './panels/filter-panel.tsx';
import { FindingsPanel } from './panels/findings-panel.tsx';
import { FirmwarePanel } from './panels/firmware-panel.tsx';
import { HazardsPanel } from './panels/hazards-panel.tsx';
import { KeysDialog } from './panels/keys-dialog.tsx';
import { LoadsPanel } from './panels/loads/loads-panel.tsx';
import { NotesPanel } from './panels/notes-panel.tsx';
import { PlansPanel } from './panels/plans/plans-panel.tsx';
import { PositionsPanel } from './panels/positions-panel.tsx';
import { SlotsPanel } from './panels/slots-panel.tsx';
import { TypesPanel } from './panels/types/types-panel.tsx';
import { UpkeepPanel } from './panels/upkeep-panel.tsx';

export interface OpenPanelProps {
  readonly sheet: Sheet;
  readonly panel: PanelName | undefined;
  readonly onGo: (finding: Finding) => void;
  readonly onGoTo: (fixture: FixtureId) => void;
  readonly onClose: () => void;
}

/** What is open beside the sheet, if anything. */
export function OpenPanel({ sheet, panel, onGo, onGoTo, onClose }: OpenPanelProps) {
  switch (panel) {
    case undefined:
      return null;
    case 'findings':
      return <FindingsPanel sheet={sheet} onGo={onGo} onClose={onClose} />;
    case 'slots':
      return <SlotsPanel sheet={sheet} onClose={onClose} />;
    case 'filter':
      return <FilterPanel sheet={sheet} onClose={onClose} />;
    case 'columns':
      return <ColumnsPanel sheet={sheet} onClose={onClose} />;
    case 'plans':
      return <PlansPanel sheet={sheet} onClose={onClose} />;
    case 'types':
      return <TypesPanel sheet={sheet} onClose={onClose} />;
    case 'firmware':
      return <FirmwarePanel sheet={sheet} onGo={onGoTo} onClose={onClose} />;
    case 'hazards':
      return <HazardsPanel sheet={sheet} onClose={onClose} />;
    case 'positions':
      return <PositionsPanel sheet={sheet} onClose={onClose} />;
    case 'loads':
      return <LoadsPanel sheet={sheet} onClose={onClose} />;
    case 'upkeep':
      return <UpkeepPanel sheet={sheet} onClose={onClose} />;
    case 'notes':
      return <NotesPanel sheet={sheet} onClose={onClose} />;
    case 'keys':
      return <KeysDialog onClose={onClose} />;
    default:
      return unreachable(panel);
  }
}
