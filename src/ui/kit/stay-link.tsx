import type { ComponentProps, MouseEvent } from 'react';

export interface StayLinkProps extends ComponentProps<'a'> {
  readonly href: string;
}

/**
 * A link between pages that are one page to the server: the address changes, what is open stays open, and the network is
 * not asked. A click with a key held, for a new tab, is the browser's own.
 */
export function StayLink({ href, ...rest }: StayLinkProps) {
  const go = (event: MouseEvent) => {
    if (event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    event.preventDefault();
    goTo(href);
  };
  return <a href={href} onClick={go} {...rest} />;
}

/** Goes to another page of the same page of the server, or to another place of a page: those hear of it as of a step of the browser. */
export function goTo(path: string): void {
  window.history.pushState(null, '', path);
  window.dispatchEvent(new HashChangeEvent('hashchange'));
}
