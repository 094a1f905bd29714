import type { z } from 'zod';
import { storableJson } from '../library/storable.ts';
import { ArchiveRefused, unreadable } from './archive-refused.ts';

/** Some parts of an archive, of which each is taken once: what is left over in the end is a part that nothing names. */
export class PartsIn {
  private readonly left: Map<string, Uint8Array>;

  constructor(files: ReadonlyMap<string, Uint8Array>) {
    this.left = new Map(files);
  }

  has(name: string): boolean {
    return this.left.has(name);
  }

  /** In a buffer of its own: what decodes it trusts declared lengths. */
  bytes(name: string): Uint8Array<ArrayBuffer> {
    const bytes = this.left.get(name);
    if (bytes === undefined) throw new ArchiveRefused({ code: 'part-missing', part: name });
    this.left.delete(name);
    return Uint8Array.from(bytes);
  }

  text(name: string): string {
    const bytes = this.bytes(name);
    try {
      return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
    } catch {
      // No UTF-8: every part that is text is.
      throw unreadable(name);
    }
  }

  /** A part that is JSON of a shape, and that the store can hold to the letter. */
  json<Schema extends z.ZodType>(name: string, schema: Schema): z.output<Schema> {
    const value = parsed(this.text(name), name);
    const read = schema.safeParse(value);
    if (!read.success || storableJson({ value }) !== JSON.stringify({ value })) throw unreadable(name);
    return read.data;
  }

  end(): void {
    const [part] = this.left.keys();
    if (part !== undefined) throw new ArchiveRefused({ code: 'part-added', part });
  }
}

function parsed(text: string, name: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw unreadable(name);
  }
}
