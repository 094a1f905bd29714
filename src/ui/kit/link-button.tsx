import type { ComponentProps } from 'react';
import { joinClasses } from './join-classes.ts';
import { LINK_CLASSES } from './text-link.tsx';

/** A button that reads like a link within a line of words: a plan in the margin, an action in a menu of words. */
export function LinkButton({ type = 'button', className, ...rest }: ComponentProps<'button'>) {
  return (
    <button
      type={type}
      className={joinClasses(LINK_CLASSES, 'text-left disabled:text-soft disabled:no-underline', className)}
      {...rest}
    />
  );
}
