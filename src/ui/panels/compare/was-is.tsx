import type { TaskCells } from '#engine/sheet/task-sheet.ts';
import { COMPARE_RIGS_WORDS as words } from '#words/compare.ts';

/** What was, struck through, and what is to be, an arrow between them; one side alone where there is no other. */
export function WasIs({ before, after }: Pick<TaskCells, 'before' | 'after'>) {
  return (
    <span className="[overflow-wrap:anywhere]">
      {before === '' ? null : (
        <del className="text-soft line-through">
          <span className="sr-only">{words.was}</span>
          {before}
        </del>
      )}
      {before === '' || after === '' ? null : <span aria-hidden="true"> → </span>}
      {after === '' ? null : (
        <ins className="font-medium no-underline">
          <span className="sr-only">{words.becomes}</span>
          {after}
        </ins>
      )}
    </span>
  );
}
