import { unreachable } from '#base/unreachable.ts';
import type { Finding } from '#engine/model/finding.ts';
import { SUPPLY_RULES, type SupplyRule, type SupplyTrouble } from '#engine/model/supply-trouble.ts';
import { ampsText, kilogramsText, percentText, voltsText } from './amounts.ts';
import { CARD_CHOICE_WORDS } from './cards.ts';

/** What each rule of feeds and limits is called in a list of findings. */
export const SUPPLY_RULE_TITLES: Readonly<Record<SupplyRule, string>> = {
  'circuit-over-rating': 'Circuit over its rating',
  'line-over-rating': 'Line of a supply over its rating',
  'neutral-over-rating': 'Neutral of a supply over its rating',
  'position-over-limit': 'Position over its limit',
  'circuit-over-share': 'Circuit over its share for hours',
  'line-over-share': 'Line over its share for hours',
  'circuit-supply-gone': 'Supply not known',
  'circuit-phase': 'Phase does not fit the supply',
  'circuit-crowded': 'More units than a breaker stands',
  'unit-voltage': 'Not made for the voltage',
  'circuit-power-unknown': 'Power not known',
  'volts-unsaid': 'Voltage not said',
  'position-weight-unknown': 'Weight not known',
  'limit-unsigned': 'Nobody answers for the limit',
  'circuit-undescribed': 'Circuit not described',
  'lines-unbalanced': 'Lines out of balance',
};

type SupplyFinding = Extract<Finding, SupplyTrouble>;

export const isSupplyFinding = (finding: Finding): finding is SupplyFinding =>
  (SUPPLY_RULES as readonly string[]).includes(finding.rule);

/** A finding of feeds or limits in full. `units`: the names of its units, empty for none. */
export function supplySentence(finding: SupplyFinding, units: string): string {
  switch (finding.rule) {
    case 'circuit-over-rating':
      return `Circuit “${finding.circuit}” draws ${ampsText(finding.amps)}; its breaker is made for ${ampsText(finding.rating)}. Put some of its units on another: ${units}`;
    case 'line-over-rating':
      return `Line ${finding.at} of “${finding.supply}” carries ${ampsText(finding.amps)}; it is made for ${ampsText(finding.rating)}. Balance the supply, or take load off it`;
    case 'neutral-over-rating':
      return `The neutral of “${finding.supply}” carries ${ampsText(finding.amps)}; a line is made for ${ampsText(finding.rating)}. Balance the supply, and ask an electrician`;
    case 'position-over-limit':
      return `“${finding.position}” holds ${kilogramsText(finding.kilograms)}; ${limitText(finding)}. Take weight off, or ask a rigger`;
    case 'circuit-over-share':
      return `Circuit “${finding.circuit}” draws ${ampsText(finding.amps)}, more than ${shareOf(finding)}: ${units}`;
    case 'line-over-share':
      return `Line ${finding.at} of “${finding.supply}” carries ${ampsText(finding.amps)}, more than ${shareOf(finding)}`;
    case 'circuit-supply-gone':
      return `Circuit “${finding.circuit}” is on “${finding.supply}”, which is no supply here. Describe it, or choose another`;
    case 'circuit-phase':
      return phaseSentence(finding);
    case 'circuit-crowded':
      return `Circuit “${finding.circuit}” has ${finding.units} of “${finding.type}”; on ${finding.breaker.trim() === '' ? 'one breaker' : finding.breaker} its manual allows ${finding.most}: ${units}`;
    case 'unit-voltage':
      return `Circuit “${finding.circuit}” is at ${voltsText(finding.volts)}, for which by their manuals these are not made: ${units}`;
    case 'circuit-power-unknown':
      return `Circuit “${finding.circuit}” draws more than is reckoned: nobody knows the power of ${units}`;
    case 'volts-unsaid':
      return `Nobody said at which voltage the circuits are. They are reckoned at ${voltsText(finding.volts)}: say it on the page of the supply`;
    case 'position-weight-unknown':
      return `“${finding.position}” holds more than is reckoned: nobody knows the weight of ${units}`;
    case 'limit-unsigned':
      return `Nobody is named who allows ${kilogramsText(finding.limit)} at “${finding.position}”. Name the person responsible`;
    case 'circuit-undescribed':
      return `Circuit “${finding.circuit}” is not described, though others are: ${units}`;
    case 'lines-unbalanced':
      return `The lines of “${finding.supply}” carry from ${ampsText(finding.least)} to ${ampsText(finding.most)}. Balance the supply`;
    default:
      return unreachable(finding);
  }
}

/** `Ona Reeve allows 500 kg, as of 2026-11-25`. */
export function limitText({ limit, person, on }: { limit: number; person: string; on: string }): string {
  if (person.trim() === '') return `the limit is ${kilogramsText(limit)}, by nobody who is named`;
  return `${person.trim()} allows ${kilogramsText(limit)}${on.trim() === '' ? '' : `, as of ${on.trim()}`}`;
}

const shareOf = ({ share, rating, rules }: { share: number; rating: number; rules: string }) =>
  `the ${percentText(share)} of ${ampsText(rating)} that it may carry for hours${rules === '' ? '' : ` by ${rules}`}`;

function phaseSentence({ circuit, supply, phase, phases }: Extract<SupplyFinding, { rule: 'circuit-phase' }>): string {
  return phase === null
    ? `Circuit “${circuit}” is on no phase of “${supply}”, which has ${phases === 1 ? 'one' : 'three'}, so that no line is reckoned with it. Say which`
    : `Circuit “${circuit}” is on phase ${CARD_CHOICE_WORDS[phase] ?? phase} of “${supply}”, which has ${phases === 1 ? 'one phase' : 'three'}. Choose another`;
}
