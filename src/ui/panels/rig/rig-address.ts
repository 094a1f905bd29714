export const RIG_PAGES = [
  'sheet',
  'universes',
  'network',
  'runs',
  'supply',
  'house',
  'upkeep',
  'revisions',
  'history',
  'restore',
  'lists-in',
  'sheets-out',
] as const;

export type RigPage = (typeof RIG_PAGES)[number];

/** Where one is within the rigs: `page` is undefined when a rig has no such page. */
export interface RigAddress {
  readonly rigId: string;
  readonly page: RigPage | undefined;
}

/** Reads `/rigs/abc` and `/rigs/abc/lists-in`. */
export function rigAddress(path: string): RigAddress {
  const [, , rigId = '', name = 'sheet', ...more] = path.replace(/\/$/, '').split('/');
  const page = more.length === 0 ? RIG_PAGES.find((known) => known === name) : undefined;
  return { rigId, page };
}

/** The path of a page of a rig. */
export function rigPath(rigId: string, page: RigPage): string {
  return page === 'sheet' ? `/rigs/${rigId}` : `/rigs/${rigId}/${page}`;
}
