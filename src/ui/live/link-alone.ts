import type { PersonHere, RigLink, SaveStatus } from './link.ts';
import { createListeners } from './listeners.ts';

/** A link to nobody, for a rig that lives in memory only: tests and measurements say themselves what comes over it. */
export interface LinkAlone extends RigLink {
  /** Who is here now. */
  setPeople(people: readonly PersonHere[]): void;
  setStatus(status: SaveStatus): void;
}

export function linkAlone(): LinkAlone {
  const listeners = createListeners();
  let people: readonly PersonHere[] = [];
  let status: SaveStatus = { state: 'saved', detail: '' };
  return {
    status: () => status,
    canEdit: () => status.state !== 'read-only',
    hasArrived: () => true,
    people: () => people,
    setWhere: () => undefined,
    onChange: listeners.add,
    close: () => undefined,
    setPeople(next) {
      people = next;
      listeners.tell();
    },
    setStatus(next) {
      status = next;
      listeners.tell();
    },
  };
}
