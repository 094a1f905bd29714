import { groupBy } from '#base/group-by.ts';
import { ok, type Result, refuse } from '#base/result.ts';
import { tableOf } from '#base/table.ts';
import { footprintAt } from '../../address/claim.ts';
import { SLOTS } from '../../model/address.ts';
import { nameKey } from '../../model/card.ts';
import { modeOf } from '../../model/find-mode.ts';
import type { Fixture } from '../../model/fixture.ts';
import { foldName, positionId } from '../../model/ids.ts';
import type { Rig } from '../../model/rig.ts';
import { chainOf } from '../../network/runs/run-chain.ts';
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
  const inOrder = orderOf(rig, fixtures, options);
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

function groupOf({ position, run, type }: Fixture, { together }: AllocateOptions): string {
  switch (together) {
    case 'by-position':
      return positionId(position);
    case 'by-run':
      return nameKey(run);
    case 'by-type':
      return foldName(type);
    default:
      return '';
  }
}

/** As they were chosen, or as they hang; those of a run as it passes them. */
function orderOf(rig: Rig, fixtures: readonly Fixture[], { together }: AllocateOptions): readonly Fixture[] {
  if (together === 'in-order') return fixtures;
  const hung = byPlace({ ...rig, fixtures: tableOf(fixtures) });
  if (together !== 'by-run') return hung;
  const runs = groupBy(hung, ({ run }) => nameKey(run));
  const done = new Set<string>();
  return hung.flatMap((fixture) => {
    const run = nameKey(fixture.run);
    if (run === '') return [fixture];
    if (done.has(run)) return [];
    done.add(run);
    return chainOf(runs.get(run) ?? [], []).flatMap((link) => (link.kind === 'unit' ? [link.fixture] : []));
  });
}
