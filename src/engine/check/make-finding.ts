import { unreachable } from '#base/unreachable.ts';
import type { Finding, SlotRun, Trouble } from '../model/finding.ts';
import { type FixtureId, SEPARATOR } from '../model/ids.ts';
import { PLANT_RULES, type PlantTrouble } from '../model/plant-trouble.ts';
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
  if (isPlantTrouble(trouble)) return JSON.stringify(trouble);
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
    default:
      return unreachable(trouble);
  }
}

const spell = (run: SlotRun) => `${run.universe}:${run.first}-${run.last}`;

const OF_PLANT: ReadonlySet<string> = new Set(PLANT_RULES);

const isPlantTrouble = (trouble: Trouble): trouble is PlantTrouble => OF_PLANT.has(trouble.rule);
