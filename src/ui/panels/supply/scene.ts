import type { Result } from '#base/result.ts';
import type { Plan } from '#engine/model/edit.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { PlanRefusal } from '#engine/patch/plan-refusal.ts';
import type { CircuitLoad } from '#engine/supply/circuit-loads.ts';
import type { VenueRules } from '#engine/supply/load-rules.ts';
import type { PositionLoad } from '#engine/supply/position-loads.ts';
import type { SupplyLoad } from '#engine/supply/supply-loads.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { carryOutPlan } from '../../workspace/carry-out-plan.ts';
import { refusalSentence } from '../../workspace/notice-line.tsx';

/** What every part of the page is drawn from, and what it can do. */
export interface Scene {
  readonly store: RigStore;
  readonly rig: Rig;
  readonly rules: VenueRules;
  readonly circuits: readonly CircuitLoad[];
  readonly supplies: readonly SupplyLoad[];
  readonly positions: readonly PositionLoad[];
  readonly findings: readonly Finding[];
  readonly writable: 'yes' | 'no';
  readonly chosen: ReadonlySet<FixtureId>;
  /** Chooses a unit, or takes it out of the choice. */
  readonly onChoose: (id: FixtureId) => void;
  readonly onAsk: (question: Question) => void;
}

/** Something that is asked before it is done. */
export type Question =
  | { readonly kind: 'rename'; readonly card: 'supply' | 'circuit'; readonly key: string; readonly name: string }
  | {
      readonly kind: 'remove';
      readonly card: 'supply' | 'circuit' | 'limit';
      readonly key: string;
      readonly name: string;
    }
  | { readonly kind: 'balance'; readonly supply: string };

/** Carries a plan out; answers with why not, as a sentence. A reader hears that first. */
export function carryOut({ store }: Pick<Scene, 'store'>, plan: Result<Plan, PlanRefusal>): string | undefined {
  return store.canEdit() ? carryOutPlan(store, plan) : refusalSentence({ code: 'read-only' }, store.rig());
}

/** The largest of some figures; 0 of none. */
export const largest = (figures: readonly number[]): number => figures.reduce((a, b) => Math.max(a, b), 0);
