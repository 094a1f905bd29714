// Run as a process of its own, so that what it burns is not taken from those who are measured.

import { readOrders } from '#tests/support/serve-port.ts';
import { type AttackName, attack } from './attacks.ts';

export interface AttackOrders {
  readonly port: number;
  readonly rig: string;
  readonly names: readonly AttackName[];
}

const { port, rig, names } = readOrders<AttackOrders>();
const times: Record<string, number> = {};
for (const name of names) times[name] = await attack(name, { port, rig });
console.log(JSON.stringify(times));
process.disconnect?.();
