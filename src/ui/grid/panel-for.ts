import type { Finding, Rule } from '#engine/model/finding.ts';
import { isOnNetworkPage } from '../panels/network/finding-places.ts';
import type { RigPage } from '../panels/rig/rig-address.ts';
import type { PanelName } from './sheet.ts';

const PANELS: Partial<Readonly<Record<Rule, PanelName>>> = {
  'unknown-type': 'types',
  'unknown-mode': 'types',
  'no-slots': 'types',
  'library-differs': 'types',
  'firmware-mode': 'firmware',
  'firmware-wanted': 'firmware',
  'hazard-unsigned': 'hazards',
};

/** The panel in which a finding is dealt with; undefined when a plan, or a look at the row, does. */
export const panelFor = ({ rule }: Finding): PanelName | undefined => PANELS[rule];

/** The page of the rig on which a finding is dealt with; undefined when it is in the sheet. */
export const pageFor = (finding: Finding): RigPage | undefined => (isOnNetworkPage(finding) ? 'network' : undefined);
