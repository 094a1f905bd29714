import type { Finding, Rule } from '#engine/model/finding.ts';
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
