import { PRODUCT } from '#words/screens.ts';

/** The title of the page in the browser's own list of pages. Exactly one may be rendered at a time. */
export function PageTitle({ title }: { readonly title: string }) {
  return <title>{title === PRODUCT ? PRODUCT : `${title} · ${PRODUCT}`}</title>;
}
