import type { Said } from '../kit/message.tsx';

/** One thing that is asked of the server. */
interface Door<Args extends readonly unknown[]> {
  readonly ask: (...args: Args) => void;
  /** Until it is answered, and the page that shows the answer is there. */
  readonly busy: boolean;
  readonly refused: Said | undefined;
}

/** The two ends of a draft: a revision of a type in the library, with a note, or nothing. */
export interface Doors {
  readonly publish: Door<[note: string]>;
  readonly drop: Door<[]>;
}
