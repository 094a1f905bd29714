import type * as Y from 'yjs';
import { type Result, refuse } from '#base/result.ts';
import { applyDraftEdits, type DraftRefusal } from '#document/draft/apply-draft-edits.ts';
import { createDraftHistory } from '#document/draft/draft-history.ts';
import { watchDraft } from '#document/draft/draft-reader.ts';
import type { Draft, DraftEdit } from '#engine/draft/draft.ts';
import type { DraftTrouble } from '#engine/draft/draft-trouble.ts';
import { typeOfDraft } from '#engine/draft/type-of-draft.ts';
import type { FixtureType } from '#engine/model/fixture-type.ts';
import type { PersonHere, RigLink, SaveStatus } from './link.ts';
import { createListeners } from './listeners.ts';

export type DraftApplyRefusal = DraftRefusal | { readonly code: 'read-only' };

/** A draft with what it amounts to. */
interface DraftReading {
  readonly draft: Draft;
  readonly type: FixtureType;
  readonly troubles: readonly DraftTrouble[];
}

/** One open draft of a fixture type: its document, reading, history, people and save state behind one door. */
export interface DraftStore {
  /** The type of the revision it starts from. */
  readonly base: FixtureType | null;
  /** The same object until the draft changes. */
  reading(): DraftReading;
  subscribe(listen: () => void): () => void;
  /** Makes edits as one step of mine, or says why not. */
  apply(edits: readonly DraftEdit[]): Result<void, DraftApplyRefusal>;
  /** Takes back my latest step; false when there is none. */
  undo(): boolean;
  redo(): boolean;
  canUndo(): boolean;
  canRedo(): boolean;
  subscribeHistory(listen: () => void): () => void;
  status(): SaveStatus;
  people(): readonly PersonHere[];
  setWhere(where: PersonHere['where']): void;
  canEdit(): boolean;
  hasArrived(): boolean;
  /** Told when status, people or the right to edit change. */
  subscribeLink(listen: () => void): () => void;
  close(): void;
}

export interface DraftStoreParts {
  readonly doc: Y.Doc;
  readonly link: RigLink;
  /** The origin of everything done here. */
  readonly origin: unknown;
  readonly base: FixtureType | null;
}

/** Opens a draft. Nothing in it knows of a screen; `close` lets go of everything but the document. */
export function openDraftStore({ doc, link, origin, base }: DraftStoreParts): DraftStore {
  const reader = watchDraft(doc);
  const history = createDraftHistory(doc, origin);
  const changed = createListeners();
  const linkChanged = createListeners();
  let reading: DraftReading | undefined;
  reader.onChange(changed.tell);
  const unlink = link.onChange(linkChanged.tell);
  return {
    base,
    reading() {
      const draft = reader.draft();
      if (reading?.draft !== draft) reading = { draft, ...typeOfDraft(draft, base) };
      return reading;
    },
    subscribe: changed.add,
    apply: (edits) => (link.canEdit() ? applyDraftEdits(doc, edits, origin) : refuse({ code: 'read-only' })),
    undo: () => link.canEdit() && history.undo(),
    redo: () => link.canEdit() && history.redo(),
    canUndo: history.canUndo,
    canRedo: history.canRedo,
    subscribeHistory: history.onChange,
    status: link.status,
    people: link.people,
    setWhere: link.setWhere,
    canEdit: link.canEdit,
    hasArrived: link.hasArrived,
    subscribeLink: linkChanged.add,
    close() {
      unlink();
      history.close();
      reader.close();
      link.close();
    },
  };
}
