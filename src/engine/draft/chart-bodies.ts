import type { Part } from '../model/fixture-type.ts';
import { oneLine } from './cell-text.ts';
import type { ChartLayout, LaidRepeat, LaidRow } from './chart-layout.ts';
import { createUniqueNames } from './unique-names.ts';

/** The body that the rows of a chart act on. */
export interface ChartBody {
  readonly root: string;
  /** The name of the part that a row is of. */
  partOf(row: LaidRow): string;
}

/** The parts of all charts of a draft. */
interface ChartBodies {
  readonly parts: readonly Part[];
  bodyOf(layout: ChartLayout): ChartBody;
}

/**
 * Parts for charts, of names that no other part has. Charts whose cells stand in the same places share one body, so that a
 * part of one name is one part of the unit.
 */
export function createChartBodies(taken: Iterable<string>): ChartBodies {
  const unique = createUniqueNames(taken);
  const parts: Part[] = [];
  const add: AddPart = (wanted, within, copy = null) => {
    const name = unique(wanted);
    parts.push({ name, kind: 'part', within, copy });
    return name;
  };
  const bodies = new Map<string, SharedBody>();
  return {
    parts,
    bodyOf({ repeats }) {
      const places = JSON.stringify(repeats.map((each) => [cellName(each), each.count, each.breaks]));
      const body = bodies.get(places) ?? createBody(repeats, add);
      bodies.set(places, body);
      return {
        root: body.root,
        partOf: ({ row, repeat }) => body.partOf(repeat === null ? -1 : repeats.indexOf(repeat), oneLine(row.part)),
      };
    },
  };
}

type AddPart = (wanted: string, within: string | null, copy?: Part['copy']) => string;

interface SharedBody {
  readonly root: string;
  /** `cell`: the place of a repeat, -1 for the body. */
  partOf(cell: number, part: string): string;
}

const cellName = ({ repeat }: LaidRepeat) => oneLine(repeat.name) || 'Cell';

function createBody(repeats: readonly LaidRepeat[], add: AddPart): SharedBody {
  const cells = repeats.map((repeat) => add(cellName(repeat), null));
  const root = add('Body', null);
  for (const [at, repeat] of repeats.entries()) {
    for (let cell = 0; cell < repeat.count; cell++) {
      const starts = repeat.breaks.map((each) => ({ break: each.break, slot: each.lowest + cell * each.step }));
      add(`${cellName(repeat)} ${cell + 1}`, root, { of: cells[at] ?? root, starts });
    }
  }
  const inner = new Map<string, string>();
  return {
    root,
    partOf(cell, part) {
      const top = cells[cell] ?? root;
      if (part === '') return top;
      const key = `${cell}/${part}`;
      const name = inner.get(key) ?? add(part, top);
      inner.set(key, name);
      return name;
    },
  };
}
