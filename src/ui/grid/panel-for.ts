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
  'circuit-over-rating': 'loads',
  'circuit-over-share': 'loads',
  'circuit-supply-gone': 'loads',
  'circuit-phase': 'loads',
  'circuit-crowded': 'loads',
  'unit-voltage': 'loads',
  'circuit-power-unknown': 'loads',
  'circuit-undescribed': 'loads',
  'position-over-limit': 'loads',
  'position-weight-unknown': 'loads',
  'line-over-rating': 'loads',
  'line-over-share': 'loads',
  'neutral-over-rating': 'loads',
  'lines-unbalanced': 'loads',
  'volts-unsaid': 'loads',
  'limit-unsigned': 'loads',
  'fault-open': 'upkeep',
};

/** The panel in which a finding is dealt with; undefined when a plan, or a look at the row, does. */
export const panelFor = ({ rule }: Finding): PanelName | undefined => PANELS[rule];

/** The page of the rig on which a finding is dealt with; undefined when it is in the sheet. */
export const pageFor = (finding: Finding): RigPage | undefined => (isOnNetworkPage(finding) ? 'network' : undefined);
