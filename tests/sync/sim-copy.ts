import { ok, refuse } from '#base/result.ts';
import type { CopiedRig, CopyBatch, LocalCopy } from '#ui/live/sync/local-copy.ts';
import type { Held, Life } from './held.ts';

/** The storage of one device: it outlives the pages that write to it. */
export class SimDevice {
  private known: Uint8Array[] = [];
  private mine = new Map<number, Uint8Array>();
  private seq = 0;
  private clients: number[] = [];
  private lastKey = 0;

  constructor(private readonly held: Pick<Held, 'hold'>) {}

  content(): CopiedRig {
    return {
      known: [...this.known],
      mine: [...this.mine].map(([key, bytes]) => ({ key, bytes })),
      seq: this.seq,
      clients: [...this.clients],
    };
  }

  /** The copy as one page reaches it. */
  copyFor(life: Life): LocalCopy {
    return {
      load: () => this.held.hold(life, async () => ok(this.content())).catch(() => refuse('failed' as const)),
      write: (batch) => this.held.hold(life, async () => ok(this.write(batch))).catch(() => refuse('full' as const)),
      close: () => undefined,
    };
  }

  private write(batch: CopyBatch): readonly number[] {
    this.known.push(...batch.known);
    for (const key of batch.acknowledged) {
      const bytes = this.mine.get(key);
      if (bytes) this.known.push(bytes);
      this.mine.delete(key);
    }
    this.seq = Math.max(this.seq, batch.seq);
    this.clients = [...new Set([...this.clients, batch.client])];
    return batch.mine.map((bytes) => {
      this.mine.set(++this.lastKey, bytes);
      return this.lastKey;
    });
  }
}
