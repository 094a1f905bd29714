import { ok, type Result, refuse } from '#base/result.ts';
import { getRow } from '#base/table.ts';
import { setCard } from '../../model/card-edits.ts';
import type { Edit, Plan } from '../../model/edit.ts';
import type { Fixture } from '../../model/fixture.ts';
import { foldName } from '../../model/ids.ts';
import { recordOf, type Spare } from '../../model/record.ts';
import type { Rig } from '../../model/rig.ts';
import { cellEdits, planOf } from '../chosen.ts';
import type { PlanRefusal } from '../plan-refusal.ts';
import { faultOf, mendEdits, type Upkeep } from './fault-plans.ts';

/** The device that comes in: out of the spares, or from elsewhere. An empty type or mode is that of the unit. */
export type DeviceIn =
  | { readonly from: 'spare'; readonly spare: string }
  | { readonly from: 'elsewhere'; readonly where: string; readonly type: string; readonly mode: string };

export interface SwapRequest extends Upkeep {
  readonly device: DeviceIn;
  /** What tells the devices apart, such as serial numbers; empty: nobody looked. */
  readonly serialOut: string;
  readonly serialIn: string;
  readonly why: string;
  /** The fault that it mends, and what is written of that; undefined: none. */
  readonly mends: { readonly fault: string; readonly done: string } | undefined;
}

interface Incoming {
  readonly type: string;
  readonly mode: string;
  /** Where it came from, in words. */
  readonly origin: string;
  readonly edits: readonly Edit[];
}

/**
 * Exchanges the device that a unit is. Channel, position, number and addresses stay; type and mode become those of the device that
 * comes in, and what firmware the old one had is forgotten. One is taken off the count of its spares. [UK4]
 */
export function swapDevice(rig: Rig, request: SwapRequest): Result<Plan, PlanRefusal> {
  const { id, unit, called, why, by, on, mends } = request;
  const fixture = getRow(rig.fixtures, unit);
  if (fixture === undefined) return refuse({ code: 'no-such-fixture', fixture: unit });
  const incoming = incomingOf(rig, request.device);
  if (!incoming.ok) return incoming;
  if (mends !== undefined && faultOf(rig, mends.fault) === undefined) {
    return refuse({ code: 'no-such-card', card: 'fault' });
  }
  const cells = { out: request.serialOut.trim(), in: request.serialIn.trim(), from: incoming.value.origin };
  return planOf(rig, 'swap-device', [
    ...setCard('swap', id, { unit, called, ...cells, why: why.trim(), by: by.trim(), on: on.trim() }),
    ...incoming.value.edits,
    ...typeEdits(fixture, incoming.value),
    ...cellEdits(fixture, 'firmware', null),
    ...(mends === undefined ? [] : mendEdits({ ...mends, by, on })),
  ]);
}

function incomingOf(rig: Rig, device: DeviceIn): Result<Incoming, PlanRefusal> {
  if (device.from === 'elsewhere') {
    const origin = device.where.trim();
    if (origin === '' && device.type.trim() === '') return refuse({ code: 'nothing-said', of: 'swap' });
    return ok({ type: device.type.trim(), mode: device.mode.trim(), origin, edits: [] });
  }
  const spare = recordOf(rig.cards).spares.find((each) => each.id === device.spare);
  if (spare === undefined) return refuse({ code: 'no-such-card', card: 'spare' });
  if (spare.count === 0) return refuse({ code: 'no-spare-left', type: spare.type });
  const edits = spare.count === null ? [] : setCard('spare', spare.id, { count: spare.count - 1 });
  return ok({ type: spare.type, mode: spare.mode, origin: originOf(spare), edits });
}

const originOf = ({ type, where }: Spare) => (where === '' ? type : `${type}, ${where}`);

/** Names that differ in case and white space only are of the same device. */
function typeEdits(fixture: Fixture, { type, mode }: Incoming): readonly Edit[] {
  const isNew = (now: string, next: string) => next !== '' && foldName(now) !== foldName(next);
  return [
    ...(isNew(fixture.type, type) ? cellEdits(fixture, 'type', type) : []),
    ...(isNew(fixture.mode, mode) ? cellEdits(fixture, 'mode', mode) : []),
  ];
}
