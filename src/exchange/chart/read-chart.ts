import { ok, type Result, refuse } from '#base/result.ts';
import type { ChartLine, ChartReading, ChartRefusal, LineBecame, RowRef } from '#engine/draft/chart-reading.ts';
import type { Fate, RawRow } from './blocks.ts';
import { cleanText } from './clean-text.ts';
import { finishMode } from './finish-mode.ts';
import { CHART_LIMITS } from './limits.ts';
import { readBlocks } from './read-blocks.ts';
import { splitLines } from './split-lines.ts';

/**
 * Reads a slot chart as people paste it from a manual or a spreadsheet: its modes with their rows, and what became of each
 * line. Any text is read, however odd; one without text, or above the caps, is refused. Work grows with the text's length.
 */
export function readChart(text: string): Result<ChartReading, ChartRefusal> {
  if (text.length > CHART_LIMITS.characters) {
    return refuse({ code: 'too-large', limit: CHART_LIMITS.characters, characters: text.length });
  }
  const sources = text.split(/\r\n|\r|\n/);
  if (sources.length > CHART_LIMITS.lines) return refuse({ code: 'too-many-lines', limit: CHART_LIMITS.lines });
  const cleaned = cleanText(text);
  if (cleaned.trim() === '') return refuse({ code: 'no-text' });
  const split = splitLines(cleaned);
  const { blocks, fates } = readBlocks(split);
  const refs = new Map<RawRow, RowRef[]>();
  const finished = blocks.flatMap((block) => block.modes.map((_, column) => ({ block, ...finishMode(block, column) })));
  const filled = finished.filter(({ mode }) => mode.rows.length > 0);
  filled.forEach(({ rowsOf }, mode) => {
    for (const [raw, rows] of rowsOf) {
      const known = refs.get(raw);
      const more = rows.map((row) => ({ mode, row }));
      if (known === undefined) refs.set(raw, more);
      else known.push(...more);
    }
  });
  const became = new Map<number, LineBecame>();
  split.forEach(({ line }, at) => {
    const one = becameOf(fates[at] ?? { kind: 'blank' }, refs);
    const before = became.get(line);
    if (before === undefined || before.kind === 'blank') became.set(line, one);
  });
  return ok({ modes: filled.map(({ mode }) => mode), lines: linesOf(sources, became) });
}

function becameOf(fate: Fate, refs: ReadonlyMap<RawRow, readonly RowRef[]>): LineBecame {
  if (!('row' in fate)) return fate;
  const of = refs.get(fate.row) ?? [];
  return of.length === 0 ? { kind: 'left-out', reason: 'too-many-slots' } : { kind: fate.kind, of };
}

/** A line within a quoted cell that made nothing of its own goes on with the one above. */
function linesOf(sources: readonly string[], became: ReadonlyMap<number, LineBecame>): readonly ChartLine[] {
  const lines: ChartLine[] = [];
  for (const [at, text] of sources.entries()) {
    lines.push({ line: at + 1, text, became: became.get(at + 1) ?? goingOn(text, lines.at(-1)?.became) });
  }
  return lines;
}

function goingOn(text: string, above: LineBecame | undefined): LineBecame {
  if (text.trim() === '') return { kind: 'blank' };
  if (above !== undefined && 'of' in above) return { kind: 'continuation', of: above.of };
  return above?.kind === 'heading' ? above : { kind: 'left-out', reason: 'text' };
}
