import { ok, type Result, refuse } from '#base/result.ts';
import { tableOf } from '#base/table.ts';
import { footprintAt } from '../../address/claim.ts';
import { SLOTS } from '../../model/address.ts';
import { modeOf } from '../../model/find-mode.ts';
import type { Fixture } from '../../model/fixture.ts';
import { foldName, positionId } from '../../model/ids.ts';
import type { Rig } from '../../model/rig.ts';
import { byPlace } from '../../sheet/sheet-order.ts';
import { isHeld, type Party, partiesOf } from '../party.ts';
import type { PlanRefusal } from '../plan-refusal.ts';
import type { AllocateOptions } from './allocate-options.ts';

/** Slots in one run that are placed as they are: all breaks of a unit end to end, or one of them. */
export interface Block {
  readonly party: Party;
  /** Breaks, 0-based, each `from` so many slots after the start of the block. */
  readonly parts: readonly { readonly part: number; readonly from: number }[];
  readonly slots: number;
  /** What it is kept together with, as written; empty when with nothing. */
  readonly group: string;
}

/** The blocks of the chosen fixtures that may move, in the order in which they are laid down. */
export function blocksOf(
  rig: Rig,
  fixtures: readonly Fixture[],
  options: AllocateOptions,
): Result<readonly Block[], PlanRefusal> {
  const inOrder = options.together === 'in-order' ? fixtures : byPlace({ ...rig, fixtures: tableOf(fixtures) });
  const blocks: Block[] = [];
  for (const party of partiesOf(inOrder)) {
    if (isHeld(party)) continue;
    const made = blocksOfParty(rig, party, options);
    if (!made.ok) return made;
    blocks.push(...made.value);
  }
  return ok(blocks);
}

function blocksOfParty(rig: Rig, party: Party, options: AllocateOptions): Result<readonly Block[], PlanRefusal> {
  const { lead } = party;
  const mode = modeOf(rig, lead);
  if (mode === undefined) return refuse({ code: 'mode-unknown', fixture: lead.id });
  const group = groupOf(lead, options);
  const widths = mode.footprints.map((_, part) => footprintAt(mode, part));
  const apart = widths.flatMap((slots, part) =>
    slots === 0 ? [] : [{ party, parts: [{ part, from: 0 }], slots, group }],
  );
  const blocks = options.breaks === 'anywhere' ? apart : endToEnd(apart);
  const wide = blocks.find(({ slots }) => slots > SLOTS);
  if (wide !== undefined) return refuse({ code: 'too-wide', fixture: lead.id, slots: wide.slots });
  const over = blocks.find(({ slots }) => slots > SLOTS - options.spareAtEnd);
  return over === undefined ? ok(blocks) : refuse({ code: 'no-room', fixture: lead.id, slots: over.slots });
}

function endToEnd(apart: readonly Block[]): readonly Block[] {
  const [first] = apart;
  if (first === undefined) return [];
  let slots = 0;
  const parts = apart.flatMap((block) => {
    const from = slots;
    slots += block.slots;
    return block.parts.map(({ part }) => ({ part, from }));
  });
  return [{ ...first, parts, slots }];
}

function groupOf({ position, type }: Fixture, { together }: AllocateOptions): string {
  if (together === 'by-position') return positionId(position);
  return together === 'by-type' ? foldName(type) : '';
}
