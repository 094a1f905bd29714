import * as Y from 'yjs';

/** The version of the document format that this code writes. Every change of what is stored raises it. */
export const FORMAT = 4;

/** The first version that this one reads and writes on: what came since was only added. */
const FIRST_FORMAT = 1;

/**
 * The parts of a rig document. `blocks`: block id -> JSON text of rows; `cells`: `fixture/field` -> the cell's value, over
 * what the block says; `gone`: `fixture/client` -> what the remover had seen; `cards`: `kind/field/key` -> a card's cell; the rest one
 * entry per row. SPEC.md says it whole.
 */
export interface RigMaps {
  readonly meta: Y.Map<unknown>;
  readonly blocks: Y.Map<unknown>;
  readonly cells: Y.Map<unknown>;
  readonly gone: Y.Map<unknown>;
  readonly modes: Y.Map<unknown>;
  readonly positions: Y.Map<unknown>;
  readonly universes: Y.Map<unknown>;
  readonly notes: Y.Map<unknown>;
  readonly wanted: Y.Map<unknown>;
  readonly signatures: Y.Map<unknown>;
  readonly cards: Y.Map<unknown>;
}

export const MAP_NAMES = [
  'meta',
  'blocks',
  'cells',
  'gone',
  'modes',
  'positions',
  'universes',
  'notes',
  'wanted',
  'signatures',
  'cards',
] as const satisfies readonly (keyof RigMaps)[];

export function mapsOf(doc: Y.Doc): RigMaps {
  return {
    meta: doc.getMap('meta'),
    blocks: doc.getMap('blocks'),
    cells: doc.getMap('cells'),
    gone: doc.getMap('gone'),
    modes: doc.getMap('modes'),
    positions: doc.getMap('positions'),
    universes: doc.getMap('universes'),
    notes: doc.getMap('notes'),
    wanted: doc.getMap('wanted'),
    signatures: doc.getMap('signatures'),
    cards: doc.getMap('cards'),
  };
}

/** A new, empty rig document. Made once per rig, where the rig is made; everybody else receives it. */
export function createRigDoc(): Y.Doc {
  const doc = new Y.Doc();
  doc.getMap('meta').set('format', FORMAT);
  return doc;
}

/** What a document says it is: `none` is not (or not yet) a rig document, `newer` was written by a later version. */
export type Format = 'current' | 'newer' | 'none';

export function formatOf(doc: Y.Doc): Format {
  const format = doc.getMap('meta').get('format');
  if (typeof format !== 'number' || !Number.isInteger(format) || format < FIRST_FORMAT) return 'none';
  return format > FORMAT ? 'newer' : 'current';
}

/** Says of an older document that it is of this format now, so that pages of an older program leave it alone. */
export function raiseFormat(doc: Y.Doc, origin: unknown): void {
  const meta = doc.getMap('meta');
  if (meta.get('format') === FORMAT) return;
  doc.transact(() => meta.set('format', FORMAT), origin);
}
