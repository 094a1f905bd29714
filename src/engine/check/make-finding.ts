import { unreachable } from '#base/unreachable.ts';
import type { Finding, SlotRun, Trouble } from '../model/finding.ts';
import { type FixtureId, SEPARATOR } from '../model/ids.ts';
import { SEVERITY_OF } from './severity.ts';

/** The finding that `trouble` makes of `fixtures`: sorted, weighed, and with a key that says everything it says. [CH21] */
export function makeFinding(trouble: Trouble, fixtures: Iterable<FixtureId>): Finding {
  const sorted = Object.freeze([...fixtures].sort());
  const key = [trouble.rule, ...detailsOf(trouble), ...sorted].join(SEPARATOR);
  return Object.freeze({ ...trouble, key, severity: SEVERITY_OF[trouble.rule], fixtures: sorted });
}

function detailsOf(trouble: Trouble): readonly (string | number)[] {
  switch (trouble.rule) {
    case 'slots-claimed-twice':
    case 'acting-as-one':
      return [spell(trouble.run)];
    case 'past-the-end':
      return [spell(trouble.run), trouble.part, trouble.over];
    case 'unknown-type':
      return [JSON.stringify(trouble.type)];
    case 'unknown-mode':
      return [JSON.stringify([trouble.type, trouble.mode])];
    case 'unpatched':
      return [trouble.part ?? '-'];
    case 'same-place':
      return [JSON.stringify([trouble.position, trouble.unit])];
    case 'channel-on-unlike':
    case 'channel-shared':
      return [trouble.channel];
    case 'unreadable':
      return [trouble.cell.field, JSON.stringify(trouble.cell.value)];
    default:
      return unreachable(trouble);
  }
}

const spell = (run: SlotRun) => `${run.universe}:${run.first}-${run.last}`;
