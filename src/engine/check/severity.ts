import type { Rule, Severity } from '../model/finding.ts';

/** What each rule's findings weigh, in the order in which findings are listed. [CH20] */
export const SEVERITY_OF: Readonly<Record<Rule, Severity>> = Object.freeze({
  'slots-claimed-twice': 'blocker',
  'past-the-end': 'blocker',
  'port-fed-twice': 'blocker',
  'number-reserved': 'blocker',
  'same-node-address': 'blocker',
  'mixed-sub-nets': 'blocker',
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
  'universe-unreached': 'caution',
  'universe-undelivered': 'caution',
  'delivery-unnumbered': 'caution',
  'address-unreadable': 'caution',
  'node-out-of-reach': 'caution',
  'over-link': 'caution',
  'port-beyond': 'caution',
  'cast-unfit': 'caution',
  'run-overloaded': 'caution',
  'run-too-long': 'caution',
  'run-open': 'caution',
  'run-mixed': 'caution',
  'run-other-universe': 'caution',
  'run-silent': 'caution',
  'run-source-gone': 'caution',
  'run-source-beyond': 'caution',
  'run-ring': 'caution',
  'run-source-shared': 'caution',
  'splitter-loose': 'caution',
  'acting-as-one': 'note',
  'channel-shared': 'note',
  'firmware-wanted': 'note',
  'library-differs': 'note',
  'port-address-zero': 'note',
  'run-end-unsaid': 'note',
  'run-undescribed': 'note',
});

export const RULES = Object.freeze(Object.keys(SEVERITY_OF)) as readonly Rule[];

/** Severities, the gravest first. */
export const SEVERITIES: readonly Severity[] = Object.freeze(['blocker', 'caution', 'note']);
