import type { ComponentProps } from 'react';
import { joinClasses } from './join-classes.ts';

export interface ButtonProps extends ComponentProps<'button'> {
  /** `main` is the one thing a screen asks for, `danger` takes something away, `plain` is all the rest. */
  readonly look?: 'main' | 'plain' | 'danger';
}

const LOOKS = {
  main: 'border-ink bg-ink text-sheet',
  plain: 'border-edge bg-sheet text-ink hover:bg-hover',
  danger: 'border-blocker bg-sheet text-blocker hover:bg-hover',
} as const;

/** Something to press. It never submits a form unless told `type="submit"`. */
export function Button({ look = 'plain', type = 'button', className, ...rest }: ButtonProps) {
  return (
    <button
      type={type}
      className={joinClasses(
        'inline-flex min-h-control items-center justify-center gap-2 rounded-control border px-3 font-medium',
        'disabled:border-rule-strong disabled:bg-transparent disabled:text-soft',
        LOOKS[look],
        className,
      )}
      {...rest}
    />
  );
}
