import Link from 'next/link';
import type { ComponentProps } from 'react';
import { joinClasses } from './join-classes.ts';

export const LINK_CLASSES =
  'rounded-control text-ink underline decoration-edge underline-offset-[0.2em] hover:decoration-ink touch:inline-flex touch:min-h-control touch:items-center';

/** A link to another page of ours. */
export function TextLink({ className, ...rest }: ComponentProps<typeof Link>) {
  return <Link className={joinClasses(LINK_CLASSES, className)} {...rest} />;
}
