import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';

interface Looked {
  /** A selector: only what is in there. */
  readonly within?: string;
  /** Only these rules of axe. */
  readonly rules?: readonly string[];
}

/** What axe finds wrong with a page, rule by rule with the elements at fault. */
export async function axeFaults(page: Page, { within, rules }: Looked = {}): Promise<readonly string[]> {
  const builder = new AxeBuilder({ page });
  if (within !== undefined) builder.include(within);
  if (rules !== undefined) builder.withRules([...rules]);
  const { violations } = await builder.analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 200)).join(' | ')}`);
}
