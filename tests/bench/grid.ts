import { type Browser, chromium, type Page } from '@playwright/test';
import { findChromium } from '#tests/support/machine.mjs';
import { servePage } from '#tests/support/sheet-page/serve-page.ts';
import type { Outcome } from './frame/bench.ts';
import { percentile, spellTime } from './frame/measure.ts';

export const name = 'grid';
export const bar = '20,000 rows, 50 remote edits/s: p95 keystroke to paint <=1.2x of 200 rows, <=50 ms, <=1,200 cells';

/** What the page under measurement offers. */
interface BenchPage {
  readonly others: { start(): void; stop(): void; made(): number };
  readonly paints: number[];
  purposes(): readonly string[];
  cells(): number;
  /** Those that are shown, in order. */
  columns(): readonly string[];
}

interface Trial {
  readonly rows: number;
  readonly plain?: true;
  /** How often the keys below are pressed. */
  readonly turns: number;
}

interface Measured {
  readonly paints: readonly number[];
  readonly cells: number;
  readonly editsPerSecond: number;
}

/** Go three down, write four letters over a cell, close it: as a person who fills a column. */
const KEYS = ['ArrowDown', 'ArrowDown', 'ArrowDown', 'w', 'a', 's', 'h', 'Enter', 'ArrowUp', 'ArrowUp'] as const;
/** Milliseconds between keys: quicker than people, so that no work of one key hides before the next. */
const PAUSE = 35;
const BAR_RATIO = 1.2;
const BAR_MS = 50;
const BAR_CELLS = 1200;

/** Types into the sheet while others edit it, at 20,000 rows and at 200 by turns, so that the machine's moods hit both. */
export async function run({ smoke }: { readonly smoke: boolean }): Promise<Outcome> {
  const sizes = smoke
    ? { large: 300, small: 60, plain: 60, turns: 2, rounds: 1 }
    : { large: 20_000, small: 200, plain: 2_000, turns: 20, rounds: 4 };
  const served = await servePage('tests/support/sheet-page/bench-page.tsx');
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error('no Chromium to measure in');
  const browser = await chromium.launch({ executablePath });
  try {
    const large: Measured[] = [];
    const small: Measured[] = [];
    for (let round = 0; round < sizes.rounds; round++) {
      small.push(await measureTyping(browser, served.url, { rows: sizes.small, turns: sizes.turns }));
      large.push(await measureTyping(browser, served.url, { rows: sizes.large, turns: sizes.turns }));
    }
    const plain = await measureTyping(browser, served.url, { rows: sizes.plain, plain: true, turns: smoke ? 1 : 5 });
    return outcomeOf(large, small, plain);
  } finally {
    await browser.close();
    await served.close();
  }
}

function outcomeOf(large: readonly Measured[], small: readonly Measured[], plain: Measured): Outcome {
  const paintsOf = (trials: readonly Measured[]) => trials.flatMap(({ paints }) => paints);
  const figure = percentile(paintsOf(large), 0.95);
  const baseline = percentile(paintsOf(small), 0.95);
  const cells = Math.max(...large.map((trial) => trial.cells));
  const ratio = figure / baseline;
  return {
    ratio,
    figure: spellTime(figure),
    baseline: `${spellTime(baseline)} (200 rows)`,
    ok: ratio <= BAR_RATIO && figure <= BAR_MS && cells <= BAR_CELLS,
    also: {
      p50: spellTime(percentile(paintsOf(large), 0.5)),
      'p50 at 200 rows': spellTime(percentile(paintsOf(small), 0.5)),
      cells,
      'remote edits a second': Math.round(Math.min(...large.map((trial) => trial.editsPerSecond))),
      'plain table, 2,000 rows, p95': spellTime(percentile(plain.paints, 0.95)),
      keys: paintsOf(large).length,
    },
  };
}

async function measureTyping(browser: Browser, url: string, { rows, plain, turns }: Trial): Promise<Measured> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  try {
    await page.goto(`${url}?rows=${rows}${plain ? '&plain' : ''}`);
    if (plain) await page.locator('td').first().waitFor();
    else await toPurpose(page);
    await page.evaluate(() => inPage().others.start());
    await pressAll(page, 1);
    const before = await page.evaluate(() => ({
      keys: inPage().paints.length,
      made: inPage().others.made(),
      at: performance.now(),
    }));
    await pressAll(page, turns);
    const after = await page.evaluate(() => {
      const { others, paints, purposes, cells } = inPage();
      others.stop();
      const typed = purposes().filter((purpose) => purpose === 'wash').length;
      return { paints: [...paints], made: others.made(), at: performance.now(), typed, cells: cells() };
    });
    // Others write over some of it.
    if (after.typed < turns / 2) throw new Error(`${turns} times typed, ${after.typed} cells hold it`);
    const paints = after.paints.slice(before.keys);
    if (paints.length < turns * KEYS.length * 0.9)
      throw new Error(`${paints.length} paints of ${turns * KEYS.length} keys`);
    return { paints, cells: after.cells, editsPerSecond: (1000 * (after.made - before.made)) / (after.at - before.at) };
  } finally {
    await page.close();
  }
}

/** Runs in the page. */
declare function inPage(): BenchPage;

async function toPurpose(page: Page): Promise<void> {
  await page.getByRole('grid').focus();
  await page.keyboard.press('End');
  const columns = await page.evaluate(() => inPage().columns());
  const behind = columns.length - 1 - columns.indexOf('purpose');
  for (let n = 0; n < behind; n++) await page.keyboard.press('ArrowLeft');
}

async function pressAll(page: Page, turns: number): Promise<void> {
  for (let turn = 0; turn < turns; turn++) {
    for (const key of KEYS) {
      await page.keyboard.press(key);
      await page.waitForTimeout(PAUSE);
    }
  }
}
