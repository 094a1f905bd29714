import { deflateSync, inflateSync } from 'node:zlib';
import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { assert } from '#base/assert.ts';
import { seededRng } from '#base/rng.ts';
import { applyPlan } from '#document/edit/apply-plan.ts';
import { freezeRig } from '#document/frozen/frozen-rig.ts';
import { readRig } from '#document/read/rig-reader.ts';
import { createRigDoc } from '#document/schema/rig-doc.ts';
import { checkRig } from '#engine/check/check-rig.ts';
import { NO_LIBRARY } from '#engine/check/type-findings.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { setCard } from '#engine/model/card-edits.ts';
import { fixtureId, noteId } from '#engine/model/ids.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import { handoverAbout } from '#tests/support/handover-about.ts';
import { randomPlan } from '#tests/support/random-plan.ts';
import { checked } from '../record/record-job.ts';
import { readFile, type ToWrite, writeFile } from './handover-job.ts';

function someRig(seed: number): Rig {
  const rng = seededRng(seed);
  const doc = createRigDoc();
  for (let plan = 0; plan < 40; plan++) applyPlan(doc, randomPlan(rng, 20, 8), 'test');
  return readRig(doc);
}

function toWrite(rig: Rig): ToWrite {
  const text = freezeRig(rig);
  const { content, hash } = checked(rig, text, NO_LIBRARY);
  const findings = Uint8Array.from(deflateSync(JSON.stringify(checkRig(rig))));
  return { about: handoverAbout(text), frozen: { content, hash }, findings };
}

async function fileOf(rig: Rig): Promise<Uint8Array<ArrayBuffer>> {
  const written = await writeFile(toWrite(rig));
  assert(written.ok, 'the file was written');
  return written.value;
}

describe('a handover file of a rig', () => {
  it('[HO2] gives, out and in again, the same rig to the byte, whatever the rig', async () => {
    for (let seed = 0; seed < 60; seed++) {
      const rig = someRig(seed);
      const read = await readFile(await fileOf(rig), NO_LIBRARY);
      assert(read.ok, `seed ${seed}: ${JSON.stringify(read)}`);
      const text = freezeRig(rig);
      expect(inflateSync(read.value.rig.content).toString('utf8'), `seed ${seed}`).toBe(text);
      expect(read.value.about, `seed ${seed}`).toEqual(handoverAbout(text));
      expect(read.value.rig, `seed ${seed}`).toEqual(checked(rig, text, NO_LIBRARY));
    }
  });

  it('tells a person with a text editor what is open', async () => {
    const rig = applyEdits(EMPTY_RIG, [
      { kind: 'set-mode', type: 'Wash', mode: 'A', footprints: [4] },
      ...[1, 3].map((address) => ({
        kind: 'add-fixture' as const,
        fixture: fixtureId(`u${address}`),
        cells: { position: 'Bar 1', unit: String(address), type: 'Wash', mode: 'A', address },
      })),
      { kind: 'set-note', note: noteId('n'), text: 'Key is with the fire watch.', order: 1 },
      ...setCard('fault', 'f1', {
        unit: 'u3',
        called: 'x',
        what: 'shutter sticks',
        seenBy: 'Ona Reeve',
        seenOn: '2026-11-20',
      }),
      ...setCard('fault', 'f2', { unit: 'u1', what: 'fan loud', state: 'mended' }),
      ...setCard('hire', 'h1', { item: 'hazer', count: 2, from: 'Corvid Hire', due: '2026-12-01' }),
      ...setCard('hire', 'h2', { item: 'ladder', returned: '2026-11-21' }),
    ]);
    const files = unzipSync(await fileOf(rig));
    const readMe = new TextDecoder().decode(files['read-me.txt']).replaceAll('\u2011', '-');
    for (const line of [
      'Handover of “Winter show” (show rig), revision 3',
      'The dimmer at 12 sticks.',
      'Bar 1 · 3: shutter sticks (seen by Ona Reeve on 2026-11-20)',
      '2 × hazer of Corvid Hire, due back 2026-12-01',
      'Key is with the fire watch.',
    ])
      expect(readMe).toContain(line);
    expect(readMe).toMatch(/blocker: .*Bar 1 · 1/);
    for (const gone of ['fan loud', 'ladder']) expect(readMe).not.toContain(gone);
    expect(new TextDecoder().decode(files['patch.csv'])).toContain('Bar 1,1,');
  });

  it('refuses a stored revision that is not what its hash says, and a rig that cannot be read', async () => {
    const good = toWrite(someRig(1));
    const damaged = { ...good, frozen: { ...good.frozen, hash: '0'.repeat(64) } };
    expect(await writeFile(damaged)).toEqual({ ok: false, error: 'revision-damaged' });
  });
});
