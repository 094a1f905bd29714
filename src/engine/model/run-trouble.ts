import type { Universe } from './address.ts';
import type { NamedSource } from './named-source.ts';

/** What is found of data lines. `line`: the name of the run. */
export type RunTrouble =
  /** More unit loads than a segment may have. It names the units beyond. */
  | { readonly rule: 'run-overloaded'; readonly line: string; readonly loads: number }
  /** `metres` of cable, and `unknown` stretches more, where it may have `reach`, as the run, the rig or the practice of the trade has it. */
  | {
      readonly rule: 'run-too-long';
      readonly line: string;
      readonly metres: number;
      readonly unknown: number;
      readonly reach: number;
      readonly by: 'run' | 'rig' | 'practice';
    }
  | { readonly rule: 'run-open' | 'run-end-unsaid'; readonly line: string }
  /** No universe in which all units of it have slots, of these in which some have. */
  | { readonly rule: 'run-mixed'; readonly line: string; readonly universes: readonly Universe[] }
  /** Units with slots in `universes` on a run that carries others. */
  | {
      readonly rule: 'run-other-universe';
      readonly line: string;
      readonly carried: readonly Universe[];
      readonly universes: readonly Universe[];
    }
  /** No universe comes out where it begins. */
  | { readonly rule: 'run-silent'; readonly line: string; readonly from: NamedSource }
  /** Units on a run that nobody has described. */
  | { readonly rule: 'run-undescribed'; readonly line: string }
  /** What it begins at is gone, or has no such output. */
  | { readonly rule: 'run-source-gone' | 'run-source-beyond'; readonly line: string; readonly from: NamedSource }
  /** Runs that begin behind each other, round in a ring. */
  | { readonly rule: 'run-ring'; readonly lines: readonly string[] }
  | { readonly rule: 'run-source-shared'; readonly lines: readonly string[]; readonly from: NamedSource }
  /** A splitter that is on no run, or on one that is gone; `line` is its name. */
  | { readonly rule: 'splitter-loose'; readonly splitter: string; readonly line: string };

export const RUN_RULES = [
  'run-overloaded',
  'run-too-long',
  'run-open',
  'run-mixed',
  'run-other-universe',
  'run-silent',
  'run-source-gone',
  'run-source-beyond',
  'run-ring',
  'run-source-shared',
  'splitter-loose',
  'run-end-unsaid',
  'run-undescribed',
] as const satisfies readonly RunTrouble['rule'][];
