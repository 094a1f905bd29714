import type * as Y from 'yjs';
import type { Clock } from '#base/clock.ts';
import { type Result, refuse } from '#base/result.ts';
import { applyPlan, type EditRefusal } from '#document/edit/apply-plan.ts';
import { createHistory } from '#document/history/history.ts';
import { type LostCell, watchLostCells } from '#document/history/lost-cells.ts';
import { watchRig } from '#document/read/rig-reader.ts';
import type { OccupancyIndex } from '#engine/address/occupancy-index.ts';
import type { FindingCounts } from '#engine/check/checker.ts';
import type { NewestRevisions } from '#engine/check/type-findings.ts';
import type { Edit, Plan, PlanName } from '#engine/model/edit.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { lockedAgainst } from '#engine/model/locked.ts';
import { cellsOf } from '#engine/model/read-fixture.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { PersonHere, RigLink, SaveStatus, Where } from './link.ts';
import { createKeyedListeners, createListeners } from './listeners.ts';
import { createLostList, type Lost } from './lost-list.ts';
import { peopleByRow } from './people-by-row.ts';
import { type RigStep, watchFindings } from './rig-watch.ts';
import { createRowViews, type RowView } from './row-views.ts';

export type ApplyRefusal =
  | EditRefusal
  | { readonly code: 'read-only' }
  /** The plan would change an address of this unit, which is locked. [LK3] */
  | { readonly code: 'locked'; readonly fixture: FixtureId };

/** One open rig: its document, reading, findings, history, people and save state behind one door. */
export interface RigStore {
  rig(): Rig;
  /** Gravest first. The same array until one comes or goes. */
  findings(): readonly Finding[];
  findingsOf(id: FixtureId): readonly Finding[];
  counts(): FindingCounts;
  occupancy(): OccupancyIndex;
  row(id: FixtureId): RowView | undefined;
  /** Told after each change of the rig or its findings. */
  subscribe(listen: () => void): () => void;
  /** Told only when what `row` answers for this fixture may have changed. */
  subscribeRow(id: FixtureId, listen: () => void): () => void;
  /** Told of each step before anybody who subscribes, so that what follows the rig is up to date when they look. */
  onStep(listen: (step: RigStep) => void): () => void;
  /** Carries a plan out as one step of mine, or says why not. */
  apply(plan: Plan): Result<void, ApplyRefusal>;
  /** Takes back my latest plan, and answers with its name; undefined when there is none. */
  undo(): PlanName | undefined;
  redo(): PlanName | undefined;
  nextUndo(): PlanName | undefined;
  nextRedo(): PlanName | undefined;
  subscribeHistory(listen: () => void): () => void;
  status(): SaveStatus;
  people(): readonly PersonHere[];
  setWhere(where: Where | null): void;
  /** The unit I was at last, on whatever page of the rig: the next page begins there. */
  unit(): FixtureId | undefined;
  setUnit(id: FixtureId): void;
  canEdit(): boolean;
  /** False until there is a rig to show: a copy of this device, or what the server has. */
  hasArrived(): boolean;
  /** Told when status, people or the right to edit change. */
  subscribeLink(listen: () => void): () => void;
  /** Values of mine that gave way to another's, and units removed while I wrote into them, oldest first. */
  lost(): readonly Lost[];
  putBack(lost: Lost): Result<void, ApplyRefusal>;
  dismiss(lost: Lost): void;
  subscribeLost(listen: () => void): () => void;
  /** Says what the crew's library has now, so that what differs from it is found. */
  setLibrary(library: NewestRevisions): void;
  close(): void;
}

export interface RigStoreParts {
  readonly doc: Y.Doc;
  readonly link: RigLink;
  /** The origin of everything done here. */
  readonly origin: unknown;
  /** Whether a client id of the document is of this device. */
  readonly isMine: (client: number) => boolean;
  readonly clock: Pick<Clock, 'now'>;
}

/** Who comes back to a rig says where they are a moment after their edits arrived. */
const ARRIVING_MS = 5_000;

/** Opens a rig. Nothing in it knows of a screen; `close` lets go of everything but the document. */
export function openRigStore({ doc, link, origin, isMine, clock }: RigStoreParts): RigStore {
  const reader = watchRig(doc);
  const watch = watchFindings(reader);
  const history = createHistory(doc, origin);
  const lostCells = watchLostCells(doc, isMine, clock);
  const lostList = createLostList();
  const steps = new Set<(step: RigStep) => void>();
  const changed = createListeners();
  const rowsChanged = createKeyedListeners<FixtureId>();
  const linkChanged = createListeners();
  let inRows = peopleByRow(link.people(), new Map());
  let unit: FixtureId | undefined;
  const views = createRowViews({
    rig: watch.rig,
    findingsOf: (id) => watch.checker.findingsOf(id),
    peopleIn: (id) => inRows.get(id),
  });

  watch.onStep((step) => {
    for (const follow of [...steps]) follow(step);
    changed.tell();
    rowsChanged.tell(step.remodelled ? rowsChanged.keys() : touchedRows(step));
  });
  lostCells.onLost((cells) =>
    lostList.add(cells.map((cell) => ({ ...cell, kind: 'value', by: whoIsIn(link.people(), cell) }))),
  );
  lostCells.onLostRow((rows) => lostList.add(rows.map((row) => ({ ...row, kind: 'unit' }))));
  const unlink = link.onChange(() => {
    const before = inRows;
    inRows = peopleByRow(link.people(), before);
    lostList.name((value) => (clock.now() - value.at < ARRIVING_MS ? whoIsIn(link.people(), value) : undefined));
    linkChanged.tell();
    rowsChanged.tell([...before.keys(), ...inRows.keys()].filter((id) => before.get(id) !== inRows.get(id)));
  });

  const apply = (plan: Plan): Result<void, ApplyRefusal> => {
    if (!link.canEdit()) return refuse({ code: 'read-only' });
    // Asked again here: somebody may have locked the unit since the plan was made.
    const fixture = lockedAgainst(watch.rig(), plan.edits);
    return fixture === undefined ? applyPlan(doc, plan, origin) : refuse({ code: 'locked', fixture });
  };

  return {
    rig: watch.rig,
    findings: () => watch.checker.findings(),
    findingsOf: (id) => watch.checker.findingsOf(id),
    counts: () => watch.checker.counts(),
    occupancy: () => watch.checker.occupancy,
    row: views.of,
    subscribe: changed.add,
    subscribeRow(id, listen) {
      const stop = rowsChanged.add(id, listen);
      return () => {
        stop();
        if (!rowsChanged.has(id)) views.drop(id);
      };
    },
    onStep(follow) {
      steps.add(follow);
      return () => steps.delete(follow);
    },
    apply,
    undo: () => (link.canEdit() ? history.undo() : undefined),
    redo: () => (link.canEdit() ? history.redo() : undefined),
    nextUndo: history.nextUndo,
    nextRedo: history.nextRedo,
    subscribeHistory: history.onChange,
    status: link.status,
    people: link.people,
    setWhere: link.setWhere,
    unit: () => unit,
    setUnit(id) {
      unit = id;
    },
    canEdit: link.canEdit,
    hasArrived: link.hasArrived,
    subscribeLink: linkChanged.add,
    lost: lostList.all,
    putBack(lost) {
      const result = apply({ name: 'put-back', edits: [editBack(lost)] });
      if (result.ok) lostList.drop(lost);
      return result;
    },
    dismiss: lostList.drop,
    subscribeLost: lostList.onChange,
    setLibrary: watch.setLibrary,
    close() {
      unlink();
      lostCells.close();
      history.close();
      reader.close();
      link.close();
    },
  };
}

function editBack(lost: Lost): Edit {
  const { fixture } = lost;
  if (lost.kind === 'unit') return { kind: 'add-fixture', fixture, cells: cellsOf(lost.row) };
  return { kind: 'set-cell', fixture, field: lost.field, value: lost.mine };
}

function touchedRows(step: RigStep): ReadonlySet<FixtureId> {
  return new Set([...step.changes.map(({ id }) => id as FixtureId), ...step.refound]);
}

function whoIsIn(people: readonly PersonHere[], cell: LostCell): string | undefined {
  return people.find(({ where }) => where?.fixture === cell.fixture && where.field === cell.field)?.name;
}
