import type { LineState } from '#engine/diff/restore.ts';
import { progressWords } from '#words/restore.ts';

/** How far one is: in words, and as a bar that says the same to whoever looks from afar. */
export function Progress({ counts }: { readonly counts: Readonly<Record<LineState, number>> }) {
  const all = counts.open + counts.done + counts.stays;
  const percent = (count: number) => `${all === 0 ? 0 : (count / all) * 100}%`;
  return (
    <div className="flex flex-col gap-1">
      <p role="status" className="text-large font-semibold tabular-nums">
        {progressWords(counts)}
      </p>
      <div aria-hidden="true" className="flex h-3 border border-edge bg-sheet print:hidden">
        <div className="bg-ink" style={{ width: percent(counts.done) }} />
        <div className="border-r border-edge bg-rule-strong" style={{ width: percent(counts.stays) }} />
      </div>
    </div>
  );
}
