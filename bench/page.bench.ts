import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { readXlsx } from '../src/preview/xlsx/readXlsx';
import { launch } from '../tests/browser/launch';
import { serveDist } from '../tests/browser/serveDist';
import { buildBarePage } from './page/buildBarePage';

const ROUNDS = 9;
const root = process.cwd();
const BARE = 'bench-bare';
/** The sample that the try-out page begins with. */
const first = readFileSync(
  join(root, 'samples', existsSync(join(root, 'samples/workshop.xlsx')) ? 'workshop.xlsx' : 'job-sheet.xlsx'),
);

interface Seen {
  /** Milliseconds from the page's start until the sheet's canvas holds lines or text; until the pane's tabs can be pressed. */
  readonly sheet: number;
  readonly pane: number;
}

/** What the watching script leaves on the page. */
declare const seen: Partial<Seen>;

/** Runs in the page before anything else: looks at every frame what can be seen by now. */
function watch(): void {
  const noted: { sheet?: number; pane?: number } = {};
  Object.assign(globalThis, { seen: noted });
  const isDrawn = (canvas: HTMLCanvasElement) => {
    if (canvas.height < 300 || canvas.width < 300) return false;
    const sample = document.createElement('canvas');
    [sample.width, sample.height] = [200, 200];
    const context = sample.getContext('2d')!;
    context.drawImage(canvas, 0, 0, 200, 200, 0, 0, 200, 200);
    const colours = new Set(new Uint32Array(context.getImageData(0, 0, 200, 200).data.buffer));
    return colours.size > 8;
  };
  const look = () => {
    noted.sheet ??= [...document.querySelectorAll('canvas')].some(isDrawn) ? performance.now() : undefined;
    noted.pane ??= document.querySelector('#tab-parts') ? performance.now() : undefined;
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

async function open(browser: Browser, url: string, hasPane: boolean): Promise<Seen> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 860 } });
  const page = await context.newPage();
  await page.addInitScript(watch);
  await page.goto(url);
  await page.waitForFunction(wanted => seen.sheet !== undefined && (!wanted || seen.pane !== undefined), hasPane, {
    timeout: 120_000,
  });
  const found = await page.evaluate(() => seen as Seen);
  await context.close();
  return found;
}

const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

const { data } = await readXlsx(new Uint8Array(first));
const folder = join(root, 'dist', BARE);
await buildBarePage(root, folder, data);
const [server, browser] = await Promise.all([serveDist(), launch()]);
const bare: Seen[] = [];
const ours: Seen[] = [];
// In turns, so that other work of the machine meets both; the first round warms up.
for (let round = 0; round <= ROUNDS; round++) {
  bare.push(await open(browser, `${server.url}${BARE}/barepage.html`, false));
  ours.push(await open(browser, `${server.url}preview.html`, true));
}
await browser.close();
await server.close();
rmSync(folder, { recursive: true });
const of = (all: readonly Seen[], what: keyof Seen) => median(all.slice(1).map(seen => seen[what]));
const ratio = median(ours.slice(1).map((seen, round) => seen.sheet / bare[round + 1]!.sheet));
console.log(`Median of ${ROUNDS} rounds, from the page's start:`);
console.log(`  bare page, sheet drawn      ${Math.round(of(bare, 'sheet'))} ms`);
console.log(`  try-out page, sheet drawn   ${Math.round(of(ours, 'sheet'))} ms`);
console.log(`  try-out page, pane usable   ${Math.round(of(ours, 'pane'))} ms`);
console.log(`  sheet drawn, try-out ÷ bare ${ratio.toFixed(2)} (median of the rounds)`);
