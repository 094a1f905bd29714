import type { Hire } from '../model/record.ts';

/** Where a hired item stands: gone back, due by its day, past it, or nobody can tell, as its day is no date. */
export type HireState = 'returned' | 'due' | 'overdue' | 'no-day';

const DAY = /^\d{4}-\d{2}-\d{2}$/;

/** How a hired item stands on a day, `2026-11-25`. It is overdue from the day after it was due. [UK9] */
export function hireState({ due, returned }: Pick<Hire, 'due' | 'returned'>, today: string): HireState {
  if (returned !== '') return 'returned';
  if (!DAY.test(due) || !DAY.test(today)) return 'no-day';
  return due < today ? 'overdue' : 'due';
}
