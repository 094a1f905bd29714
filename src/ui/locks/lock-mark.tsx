import { LOCK_WORDS } from '#words/locks.ts';
import { joinClasses } from '../kit/join-classes.ts';

/** The sign of a locked address: a bar with a hasp over it; the reason shows where one points at it. */
export function LockMark({ reason, className }: { readonly reason: string; readonly className?: string }) {
  return (
    <span title={reason} className={joinClasses('inline-flex shrink-0 items-center', className)}>
      <svg aria-hidden="true" viewBox="0 0 10 12" className="h-[0.75em] w-[0.625em]">
        <path d="M2.5 5.5V3.5a2.5 2.5 0 0 1 5 0v2" fill="none" stroke="currentColor" strokeWidth="1.4" />
        <rect x="0.5" y="5.5" width="9" height="6" fill="currentColor" />
      </svg>
      <span className="sr-only">{LOCK_WORDS.mark} </span>
    </span>
  );
}
