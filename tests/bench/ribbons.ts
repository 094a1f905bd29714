import { type Browser, chromium, type Page } from '@playwright/test';
import { findChromium } from '#tests/support/machine.mjs';
import { servePage } from '#tests/support/sheet-page/serve-page.ts';
import type { Outcome } from './frame/bench.ts';
import { percentile, spellTime } from './frame/measure.ts';

export const name = 'ribbons';
export const bar =
  '2,000 universes: frames while scrolling and dragging p95 within one frame of 60 Hz, <=1.2x of 200 universes';

/** A frame of 60 Hz in milliseconds, and what timestamps are rounded by. */
const FRAME_MS = 1000 / 60 + 0.5;
const BAR_RATIO = 1.2;

interface Sizes {
  readonly large: number;
  readonly small: number;
  /** Turns of the wheel, and moves of the mouse. */
  readonly moves: number;
  readonly rounds: number;
}

interface Measured {
  readonly scrolling: readonly number[];
  readonly dragging: readonly number[];
}

/** Scrolls and drags over many full universes and over fewer by turns, so that the machine's moods hit both. */
export async function run({ smoke }: { readonly smoke: boolean }): Promise<Outcome> {
  const sizes: Sizes = smoke
    ? { large: 30, small: 20, moves: 20, rounds: 1 }
    : { large: 2000, small: 200, moves: 120, rounds: 3 };
  const served = await servePage('tests/support/sheet-page/ribbons-page.tsx');
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error('no Chromium to measure in');
  const browser = await chromium.launch({ executablePath });
  try {
    const large: Measured[] = [];
    const small: Measured[] = [];
    for (let round = 0; round < sizes.rounds; round++) {
      small.push(await measure(browser, `${served.url}?universes=${sizes.small}#all`, sizes.moves));
      large.push(await measure(browser, `${served.url}?universes=${sizes.large}#all`, sizes.moves));
    }
    return outcomeOf(large, small);
  } finally {
    await browser.close();
    await served.close();
  }
}

function outcomeOf(large: readonly Measured[], small: readonly Measured[]): Outcome {
  const all = (trials: readonly Measured[]) => trials.flatMap(({ scrolling, dragging }) => [...scrolling, ...dragging]);
  const figure = percentile(all(large), 0.95);
  const baseline = percentile(all(small), 0.95);
  const late = all(large).filter((frame) => frame > FRAME_MS).length;
  return {
    ratio: figure / baseline,
    figure: spellTime(figure),
    baseline: `${spellTime(baseline)} (200 universes)`,
    ok: figure <= FRAME_MS && figure / baseline <= BAR_RATIO,
    also: {
      'scrolling p95': spellTime(
        percentile(
          large.flatMap(({ scrolling }) => scrolling),
          0.95,
        ),
      ),
      'dragging p95': spellTime(
        percentile(
          large.flatMap(({ dragging }) => dragging),
          0.95,
        ),
      ),
      'late frames': `${late} of ${all(large).length}`,
    },
  };
}

async function measure(browser: Browser, url: string, moves: number): Promise<Measured> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  try {
    await page.goto(url);
    await page.getByRole('list', { name: 'Universe 1', exact: true }).waitFor();
    const scrolling = await framesOf(page, () => scroll(page, moves));
    const dragging = await framesOf(page, () => drag(page, moves));
    return { scrolling, dragging };
  } finally {
    await page.close();
  }
}

/** Runs in the page. */
declare const frames: { watch(): void; stop(): readonly number[] };

async function framesOf(page: Page, act: () => Promise<void>): Promise<readonly number[]> {
  await page.evaluate(() => frames.watch());
  await act();
  const seen = await page.evaluate(() => frames.stop());
  if (seen.length === 0) throw new Error('no frame was drawn');
  return seen;
}

/** Down and up again, three universes at a turn: the same way in both rigs, ends of neither. */
async function scroll(page: Page, turns: number): Promise<void> {
  await page.mouse.move(700, 500);
  for (let turn = 0; turn < turns; turn++) {
    await page.mouse.wheel(0, turn < turns / 2 ? 216 : -216);
    await page.waitForTimeout(12);
  }
}

/** Carries the first block to and fro over six universes, and back to where it was. */
async function drag(page: Page, moves: number): Promise<void> {
  const ribbon = await page.getByRole('list', { name: 'Universe 1', exact: true }).boundingBox();
  if (ribbon === null) throw new Error('universe 1 is not drawn');
  const from = { x: ribbon.x + 5, y: ribbon.y + ribbon.height / 2 };
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  for (let move = 0; move < moves; move++) {
    const along = 0.5 - 0.5 * Math.cos((2 * Math.PI * move) / moves);
    await page.mouse.move(from.x + along * (ribbon.width - 60), from.y + along * 420);
    await page.waitForTimeout(12);
  }
  const said = await page.getByRole('status').textContent();
  if (!said?.includes('would get')) throw new Error(`nothing is carried: ${said}`);
  await page.keyboard.press('Escape');
  await page.mouse.up();
}
