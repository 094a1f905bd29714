import { SaxesParser } from 'saxes';
import { fromBufferPromise } from 'yauzl';
import { assert } from '#base/assert.ts';
import { seededRng } from '#base/rng.ts';
import {
  type ChannelFunction,
  type FixtureType,
  NO_HAZARDS,
  NO_SETTINGS,
  NOTHING_STATED,
  type TypeChannel,
  type TypeMode,
} from '#engine/model/fixture-type.ts';
import { attributeNames } from '#engine/type/attribute-names.ts';
import { exportGdtf } from '#exchange/gdtf/export-gdtf.ts';
import { importGdtf } from '#exchange/gdtf/import-gdtf.ts';
import { unpack } from '#server/archive/unpack.ts';
import type { Outcome } from './frame/bench.ts';
import { percentile, spellTime } from './frame/measure.ts';

export const name = 'gdtf';
export const bar =
  '<=2x: a multi-megabyte description to a type with its report, against unzipping and parsing it alone';

/** Turn and turn about, so that neither has the machine at a better time. */
export async function run({ smoke }: { readonly smoke: boolean }): Promise<Outcome> {
  const file = Buffer.from(exportGdtf(largeType(smoke ? 1 : 60)));
  const description = await plainly(file);
  const rounds = smoke ? 1 : 15;
  const times = { ours: [] as number[], plain: [] as number[] };
  for (let round = 0; round < rounds; round++) {
    const plain = await timed(() => plainly(file));
    const ours = await timed(() => imported(file, smoke ? 1 : 60));
    if (round < 3 && !smoke) continue;
    times.plain.push(plain);
    times.ours.push(ours);
  }
  const [ours, plain] = [percentile(times.ours, 0.5), percentile(times.plain, 0.5)];
  const ratio = ours / plain;
  return {
    ratio,
    figure: spellTime(ours),
    baseline: `${spellTime(plain)} (unzip and parse alone)`,
    ok: ratio <= 2 && description.length > 5_000_000,
    also: { description: `${(description.length / 1e6).toFixed(1)} MB`, file: `${(file.length / 1e3).toFixed(0)} kB` },
  };
}

async function timed(work: () => Promise<unknown>): Promise<number> {
  const from = performance.now();
  await work();
  return performance.now() - from;
}

async function imported(file: Buffer, modes: number): Promise<void> {
  const read = await importGdtf(file, { unpack, nesting: 1 });
  if (!read.ok) throw new Error(`the file was refused: ${JSON.stringify(read.error)}`);
  const { type, report } = read.value;
  assert(type.modes.length === modes && report.defects.length === 0, `read wrongly: ${JSON.stringify(report.defects)}`);
}

/** Unzips and parses the description, making nothing of it. Answers its text. */
async function plainly(file: Buffer): Promise<string> {
  const zip = await fromBufferPromise(file, { lazyEntries: true });
  const chunks: Buffer[] = [];
  for await (const entry of zip.eachEntry()) {
    if (entry.fileName !== 'description.xml') continue;
    for await (const chunk of await zip.openReadStreamPromise(entry)) chunks.push(chunk);
  }
  const text = Buffer.concat(chunks).toString('utf8');
  let elements = 0;
  const parser = new SaxesParser();
  parser.on('opentag', () => {
    elements += 1;
  });
  parser.write(text).close();
  assert(elements > 0, 'the description has elements');
  return text;
}

/** A unit of two dozen cells in many modes, each of channels with as many named values as a spot has. */
function largeType(modes: number): FixtureType {
  const rng = seededRng(5);
  const attributes = attributeNames.slice(0, 60);
  const part = (part: string) => ({ name: part, kind: 'part' as const, within: null, copy: null });
  const channel = (attribute: string, at: number): TypeChannel => ({
    part: 'Head',
    break: 1,
    offsets: at % 3 === 0 ? [at * 2 + 1, at * 2 + 2] : [at * 2 + 1],
    resolution: at % 3 === 0 ? 2 : 1,
    highlight: null,
    initial: null,
    uses: [{ attribute, snap: 'No', master: 'None', functions: functions(attribute, at % 3 === 0 ? 257 : 1) }],
  });
  const functions = (attribute: string, step: number): ChannelFunction[] =>
    [0, 64, 128, 192].map((from, nth) => ({
      name: `${attribute} ${nth + 1}`,
      attribute,
      from: from * step,
      default: from * step,
      physical: { from: nth, to: nth + 1 },
      when: null,
      ranges: [0, 16, 32, 48].map((more) => ({
        name: `${rng.pick(['Open', 'Slow', 'Fast', 'Random'])} ${from + more}`,
        from: (from + more) * step,
        physical: null,
      })),
    }));
  const mode = (nth: number): TypeMode => ({
    name: `Mode ${nth + 1}`,
    description: '',
    root: 'Head',
    channels: attributes.map(channel),
    firmware: [],
  });
  return {
    maker: 'Corvid Stage',
    model: 'Heron',
    shortName: 'Heron',
    description: '',
    guid: '1F3B5C7D-0A2C-4E6F-8B9D-0123456789AB',
    parts: [part('Head')],
    modes: Array.from({ length: modes }, (_, nth) => mode(nth)),
    physical: NOTHING_STATED,
    settings: NO_SETTINGS,
    hazards: NO_HAZARDS,
  };
}
