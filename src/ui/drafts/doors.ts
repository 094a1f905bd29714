import type { Said } from '../kit/message.tsx';

/** What is asked of the server about the whole draft. */
export interface Doors {
  /** The ends of the draft: a type of the library, or nothing. */
  publish(note: string): void;
  drop(): void;
  readonly busy: boolean;
  readonly refused: Said | undefined;
}
