import { unreachable } from '#base/unreachable.ts';
import type { Finding, SlotRun, Trouble } from '../model/finding.ts';
import { type FixtureId, SEPARATOR } from '../model/ids.ts';
import type { NamedSource } from '../model/named-source.ts';
import { SEVERITY_OF } from './severity.ts';

/** The finding that `trouble` makes of `fixtures`: sorted, weighed, and with a key that says everything it says. [CH21] */
export function makeFinding(trouble: Trouble, fixtures: readonly FixtureId[]): Finding {
  const sorted = sortedIds(fixtures);
  let key = trouble.rule + SEPARATOR + detailsOf(trouble);
  for (const fixture of sorted) key += SEPARATOR + fixture;
  const severity = SEVERITY_OF[trouble.rule];
  // Spelled out for what every edit of an address may make: a spread takes ten times as long.
  if (trouble.rule === 'slots-claimed-twice' || trouble.rule === 'acting-as-one') {
    return { rule: trouble.rule, run: trouble.run, key, severity, fixtures: sorted };
  }
  return { ...trouble, key, severity, fixtures: sorted };
}

function sortedIds(fixtures: readonly FixtureId[]): readonly FixtureId[] {
  const [one, other] = fixtures;
  if (one === undefined || other === undefined) return fixtures;
  if (fixtures.length > 2) return [...fixtures].sort();
  return one < other ? fixtures : [other, one];
}

function detailsOf(trouble: Trouble): string {
  switch (trouble.rule) {
    case 'slots-claimed-twice':
    case 'acting-as-one':
      return spell(trouble.run);
    case 'past-the-end':
      return `${spell(trouble.run)} ${trouble.part} ${trouble.over}`;
    case 'unknown-type':
      return JSON.stringify(trouble.type);
    case 'unknown-mode':
      return JSON.stringify([trouble.type, trouble.mode]);
    case 'unpatched':
      return String(trouble.part ?? '-');
    case 'same-place':
      return JSON.stringify([trouble.position, trouble.unit]);
    case 'channel-on-unlike':
    case 'channel-shared':
      return String(trouble.channel);
    case 'unreadable':
      return `${trouble.cell.field} ${JSON.stringify(trouble.cell.value)}`;
    case 'no-slots':
      return JSON.stringify([trouble.type, trouble.mode]);
    case 'firmware-mode':
      return JSON.stringify([trouble.type, trouble.mode, trouble.found, trouble.needs]);
    case 'firmware-wanted':
      return JSON.stringify([trouble.type, trouble.wanted]);
    case 'hazard-unsigned':
      return JSON.stringify([trouble.hazard, trouble.types]);
    case 'library-differs':
      return JSON.stringify([trouble.type, trouble.here, trouble.newest]);
    case 'card-unreadable':
      return JSON.stringify([trouble.card, trouble.of, trouble.field, trouble.value]);
    case 'port-fed-twice':
    case 'number-reserved':
    case 'same-node-address':
    case 'mixed-sub-nets':
    case 'universe-unreached':
    case 'universe-undelivered':
    case 'delivery-unnumbered':
    case 'address-unreadable':
    case 'node-out-of-reach':
    case 'over-link':
    case 'port-beyond':
    case 'cast-unfit':
    case 'port-address-zero':
      return JSON.stringify(trouble);
    case 'run-overloaded':
      return JSON.stringify([trouble.line, trouble.loads]);
    case 'run-too-long':
      return JSON.stringify([trouble.line, trouble.metres, trouble.unknown, trouble.reach, trouble.by]);
    case 'run-open':
    case 'run-end-unsaid':
    case 'run-undescribed':
      return JSON.stringify(trouble.line);
    case 'run-mixed':
      return JSON.stringify([trouble.line, trouble.universes]);
    case 'run-other-universe':
      return JSON.stringify([trouble.line, trouble.carried, trouble.universes]);
    case 'run-silent':
    case 'run-source-gone':
    case 'run-source-beyond':
      return JSON.stringify([trouble.line, spellNamed(trouble.from)]);
    case 'run-ring':
      return JSON.stringify(trouble.lines);
    case 'run-source-shared':
      return JSON.stringify([trouble.lines, spellNamed(trouble.from)]);
    case 'splitter-loose':
      return JSON.stringify([trouble.splitter, trouble.line]);
    case 'circuit-over-rating':
    case 'line-over-rating':
    case 'neutral-over-rating':
    case 'position-over-limit':
    case 'circuit-over-share':
    case 'line-over-share':
    case 'circuit-supply-gone':
    case 'circuit-phase':
    case 'circuit-crowded':
    case 'unit-voltage':
    case 'circuit-power-unknown':
    case 'volts-unsaid':
    case 'position-weight-unknown':
    case 'limit-unsigned':
    case 'circuit-undescribed':
    case 'lines-unbalanced':
      return JSON.stringify(Object.values(trouble));
    default:
      return unreachable(trouble);
  }
}

const spellNamed = (from: NamedSource) => Object.values(from);

const spell = (run: SlotRun) => `${run.universe}:${run.first}-${run.last}`;
