import type { Rng } from '#base/rng.ts';
import type { Universe } from '#engine/model/address.ts';
import { LAST_ABSOLUTE } from '#engine/model/address.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import { ADDRESS_FIELDS, type CellValue, FIELDS, type Field } from '#engine/model/field.ts';
import { fixtureId, noteId } from '#engine/model/ids.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import { hostileText } from './hostile-text.ts';

/** A rig whose every text is hostile and whose numbers are sometimes none, with modes, positions, labels and notes of its own. */
export function hostileRig(rng: Rng, fixtures: number): Rig {
  const text = () => (rng.int(4) === 0 ? '' : hostileText(rng));
  const types = [text(), text(), 'Spot'];
  const modes = [text(), text(), '16ch'];
  const edits: Edit[] = [];
  for (const type of types) {
    for (const mode of modes) {
      if (rng.int(4) > 0) edits.push({ kind: 'set-mode', type, mode, footprints: footprints(rng) });
    }
  }
  const positions = [hostileText(rng), 'LX 1', hostileText(rng)];
  for (const name of positions) if (name !== '') edits.push({ kind: 'set-position', name, order: rng.int(9) / 4 - 1 });
  for (let i = rng.int(3); i > 0; i--) {
    edits.push({ kind: 'set-universe', universe: (1 + rng.int(63_999)) as Universe, label: hostileText(rng) });
    edits.push({ kind: 'set-note', note: noteId(`n${i}`), text: text(), order: rng.next() });
  }
  const value = (field: Field): CellValue => {
    if (rng.int(3) === 0) return rng.int(2) === 0 ? text() : null;
    if (field === 'type') return rng.pick(types);
    if (field === 'mode') return rng.pick(modes);
    if (field === 'position') return rng.pick(positions);
    if (field === 'order') return rng.int(2) === 0 ? rng.int(99) - 9 : rng.next();
    if (field === 'channel') return rng.pick([1, 12, 999_999, 1_000_000, 0, -4, 1.5]);
    if (!(ADDRESS_FIELDS as readonly Field[]).includes(field)) return text();
    return rng.pick([1, 512, 513, 613, 1 + rng.int(LAST_ABSOLUTE), LAST_ABSOLUTE + 1, 0, -1, 2.101, 1e300]);
  };
  for (let i = 0; i < fixtures; i++) {
    const cells = Object.fromEntries(FIELDS.map((field) => [field, value(field)]));
    edits.push({ kind: 'add-fixture', fixture: fixtureId(`f${i}`), cells });
  }
  return applyEdits(EMPTY_RIG, edits);
}

function footprints(rng: Rng): readonly number[] {
  return rng.pick([[1], [16], [512], [16, 4], [0, 4], [3, 0, 5, 7]]);
}
