import type { FixtureId } from '#engine/model/ids.ts';
import type { ColumnId } from './rows/column.ts';

/** A cell somebody is in. */
export interface Where {
  readonly fixture: FixtureId;
  readonly field: ColumnId;
  /** Where it is being carried to. */
  readonly at?: number;
}

/** Another person who has this open, in one of their windows. */
export interface PersonHere {
  readonly id: number;
  readonly name: string;
  /** A small number, the same for every window of one person. */
  readonly colour: number;
  readonly where: { readonly fixture: string; readonly field: string; readonly at?: number } | null;
}

/** Where the edits made here stand. */
export interface SaveStatus {
  /** `opening`: what waits on this device is not read yet, so that nothing can be said. */
  readonly state: 'opening' | 'saved' | 'saving' | 'on-device' | 'read-only' | 'refused';
  /** What more there is to say, in a sentence; empty when the state says it all. */
  readonly detail: string;
}

/** What ties an open rig, or a draft of a fixture type, to the other people and to the store. */
export interface RigLink {
  status(): SaveStatus;
  /** Whether edits are taken; false for a reader, and while the rig has not arrived. */
  canEdit(): boolean;
  /** Whether there is a rig to show yet. */
  hasArrived(): boolean;
  /** The others who are here. The same array until somebody comes, moves or leaves. */
  people(): readonly PersonHere[];
  setWhere(where: NonNullable<PersonHere['where']> | null): void;
  onChange(listen: () => void): () => void;
  close(): void;
}
