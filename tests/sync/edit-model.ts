import type * as Y from 'yjs';
import { present } from '#base/assert.ts';
import type { Rng } from '#base/rng.ts';

/** One edit of one cell, as the model knows it, without looking into how documents merge. */
interface ModelEdit {
  readonly id: string;
  readonly cell: string;
  readonly kind: 'set' | 'delete';
  /** Every edit of the cell that its author had seen. */
  readonly seen: ReadonlySet<string>;
}

const CELLS = 6;

/**
 * Independent of the document library: remembers what each author had seen of a cell when they edited it. Whatever the merge
 * chooses must be an edit that no other surviving edit had seen.
 */
export class EditModel {
  private readonly edits = new Map<string, ModelEdit>();

  /** Makes one edit on a document, and in the same transaction marks that it is there. */
  edit(doc: Y.Doc, rng: Rng): string {
    const id = `e${this.edits.size + 1}`;
    const cell = `c${rng.int(CELLS)}`;
    const cells = doc.getMap<string>('cells');
    const kind = cells.has(cell) && rng.int(4) === 0 ? 'delete' : 'set';
    const seen = new Set([...marksOf(doc)].filter((mark) => this.edits.get(mark)?.cell === cell));
    this.edits.set(id, { id, cell, kind, seen });
    doc.transact(() => {
      if (kind === 'set') cells.set(cell, id);
      else cells.delete(cell);
      doc.getMap('marks').set(id, true);
    });
    return id;
  }

  /** What a document shows and may not show, given the edits it says it holds; empty when all is well. */
  faults(doc: Y.Doc): string[] {
    const present = marksOf(doc);
    const cells = doc.getMap<string>('cells');
    return Array.from({ length: CELLS }, (_, nth) => `c${nth}`).flatMap((cell) => {
      const shown = cells.get(cell);
      const last = this.lastEdits(cell, present);
      const fits =
        shown === undefined
          ? last.length === 0 || last.some((edit) => edit.kind === 'delete')
          : last.some((edit) => edit.id === shown && edit.kind === 'set');
      return fits ? [] : [`${cell} shows ${shown}, not one of ${last.map((edit) => edit.id)}`];
    });
  }

  private lastEdits(cell: string, among: ReadonlySet<string>): ModelEdit[] {
    const here = [...among].map((id) => present(this.edits.get(id), `edit ${id}`)).filter((edit) => edit.cell === cell);
    return here.filter((edit) => !here.some((other) => other.seen.has(edit.id)));
  }
}

/** The edits that a document holds. */
export function marksOf(doc: Y.Doc): ReadonlySet<string> {
  return new Set(doc.getMap('marks').keys());
}
