import type { Rule, Severity } from '../model/finding.ts';

/** What each rule's findings weigh, in the order in which findings are listed. [CH20] */
export const SEVERITY_OF: Readonly<Record<Rule, Severity>> = Object.freeze({
  'slots-claimed-twice': 'blocker',
  'past-the-end': 'blocker',
  'circuit-over-rating': 'blocker',
  'line-over-rating': 'blocker',
  'neutral-over-rating': 'blocker',
  'position-over-limit': 'blocker',
  'unknown-type': 'caution',
  'unknown-mode': 'caution',
  unpatched: 'caution',
  'channel-on-unlike': 'caution',
  'same-place': 'caution',
  unreadable: 'caution',
  'no-slots': 'caution',
  'firmware-mode': 'caution',
  'hazard-unsigned': 'caution',
  'card-unreadable': 'caution',
  'circuit-over-share': 'caution',
  'line-over-share': 'caution',
  'circuit-supply-gone': 'caution',
  'circuit-phase': 'caution',
  'circuit-crowded': 'caution',
  'unit-voltage': 'caution',
  'circuit-power-unknown': 'caution',
  'volts-unsaid': 'caution',
  'position-weight-unknown': 'caution',
  'limit-unsigned': 'caution',
  'acting-as-one': 'note',
  'channel-shared': 'note',
  'firmware-wanted': 'note',
  'library-differs': 'note',
  'circuit-undescribed': 'note',
  'lines-unbalanced': 'note',
});

export const RULES = Object.freeze(Object.keys(SEVERITY_OF)) as readonly Rule[];

/** Severities, the gravest first. */
export const SEVERITIES: readonly Severity[] = Object.freeze(['blocker', 'caution', 'note']);
