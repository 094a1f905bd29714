import type { CardKind } from '../model/card.ts';
import { nameKey } from '../model/card.ts';
import type { Finding } from '../model/finding.ts';
import { namedSource, sourceTrouble } from '../model/named-source.ts';
import { type Plant, type Run, runName } from '../model/plant.ts';
import { spellSource } from '../model/run-source.ts';
import { makeFinding } from './make-finding.ts';
import type { CheckStep, PartChecker } from './part-checker.ts';
import { type OpenDelta, StandingFindings } from './standing-findings.ts';

const KINDS: readonly CardKind[] = ['node', 'run', 'splitter'];

/** How runs begin and where splitters are, whatever units are on them. [RN8] [RN9] */
export class RunCardsChecker implements PartChecker {
  readonly #standing = new StandingFindings<'runs'>();

  update({ plant, replanted }: CheckStep, delta: OpenDelta): void {
    if (!KINDS.some((kind) => replanted.has(kind))) return;
    this.#standing.settle('runs', runCardFindings(plant), delta);
  }
}

function runCardFindings(plant: Plant): readonly Finding[] {
  const runs = [...plant.runs.values()];
  return [...runs.flatMap((run) => ofSource(plant, run)), ...ofRings(plant), ...ofShared(plant), ...ofLoose(plant)];
}

function ofSource(plant: Plant, run: Run): Finding[] {
  const { from } = run;
  const trouble = sourceTrouble(plant, from);
  if (trouble === null) return [];
  const rule = trouble === 'gone' ? 'run-source-gone' : 'run-source-beyond';
  return [makeFinding({ rule, line: runName(run), from: namedSource(plant, from) }, [])];
}

/** Each ring once, by the names of its runs in natural order, as the plant lists them. */
function ofRings(plant: Plant): Finding[] {
  const before = runsBefore(plant);
  const seen = new Set<string>();
  const rings: Finding[] = [];
  for (const start of plant.runs.keys()) {
    const way: string[] = [];
    for (let at: string | undefined = start; at !== undefined && !seen.has(at); at = before.get(at)) {
      seen.add(at);
      way.push(at);
    }
    const closes = way.indexOf(before.get(way.at(-1) ?? '') ?? '');
    if (closes < 0) continue;
    const ring = new Set(way.slice(closes));
    const lines = [...plant.runs.values()].flatMap((run) => (ring.has(run.key) ? [runName(run)] : []));
    rings.push(makeFinding({ rule: 'run-ring', lines }, []));
  }
  return rings;
}

/** The run that the splitter is on at which a run begins, by keys. */
function runsBefore(plant: Plant): ReadonlyMap<string, string> {
  const on = new Map(plant.splitters.map(({ id, run }) => [id, nameKey(run)] as const));
  const before = new Map<string, string>();
  for (const { key, from } of plant.runs.values()) {
    const run = from.kind === 'splitter' ? on.get(from.splitter) : undefined;
    if (run !== undefined && plant.runs.has(run)) before.set(key, run);
  }
  return before;
}

/** The desk may have several outputs with one universe: only ports and splitters have an output once. */
function ofShared(plant: Plant): Finding[] {
  const groups = new Map<string, Run[]>();
  for (const run of plant.runs.values()) {
    if (run.from.kind !== 'port' && run.from.kind !== 'splitter') continue;
    const from = spellSource(run.from);
    groups.set(from, [...(groups.get(from) ?? []), run]);
  }
  return [...groups.values()].flatMap((runs) => {
    const [first] = runs;
    if (first === undefined || runs.length < 2) return [];
    const lines = runs.map(runName);
    return [makeFinding({ rule: 'run-source-shared', lines, from: namedSource(plant, first.from) }, [])];
  });
}

/** Splitters of one name are said once. */
function ofLoose(plant: Plant): Finding[] {
  const loose = plant.splitters.filter(({ run }) => !plant.runs.has(nameKey(run)));
  const found = loose.map(({ name, run }) =>
    makeFinding({ rule: 'splitter-loose', splitter: name, line: run.trim() }, []),
  );
  return [...new Map(found.map((finding) => [finding.key, finding] as const)).values()];
}
