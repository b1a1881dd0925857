import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { largeCatalogue } from '../tests/cases/largeCatalogue';
import { launch } from '../tests/browser/launch';
import { serveDist } from '../tests/browser/serveDist';
import { loadedFunctions } from './loadedFunctions';

/*
 * What is kept after many edits: in the functions' runtime, where each edit of a price makes another handle with its look-ups, and in the
 * try-out page, where the overall length of the first job line is typed again and again.
 */

const MB = 2 ** 20;
setFlagsFromString('--expose_gc');
const collect = runInNewContext('gc') as () => void;
const used = () => {
  collect();
  return process.memoryUsage().heapUsed / MB;
};

function editsOfPrices(count: number): void {
  const found = loadedFunctions();
  const { hoses, fittings, crimps, rates } = largeCatalogue(20, 50);
  const parts = Array.from({ length: 100 }, (_, row) => [`Alder hose ${row % 20}`]);
  for (let edit = 0; edit <= count; edit++) {
    const price = 10 + edit / 100;
    const edited = hoses.map((row, index) => (index === 1 ? [...row.slice(0, -1), price] : row));
    const handle = found.get('CATALOGUE')!(edited, fittings, crimps, null, rates, null, null, null, null, {});
    found.get('HOSEDATA')!(handle, parts, [['price per length']], {});
    if (edit === 50 || edit === 500 || edit === count) console.log(`  after ${edit} edits of a price    ${used().toFixed(1)} MB`);
  }
}

async function editsOnThePage(count: number): Promise<void> {
  const [server, browser] = await Promise.all([serveDist(), launch()]);
  const page = await browser.newPage({ viewport: { width: 1440, height: 860 } });
  await page.goto(`${server.url}preview.html`);
  await page.locator('.spreadsheet canvas').first().waitFor({ timeout: 120_000 });
  await page.waitForFunction(() => document.querySelector('.busy')!.textContent === '', null, { timeout: 120_000 });
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.enable');
  await page
    .locator('.spreadsheet canvas')
    .first()
    .click({ position: { x: 400, y: 300 } });
  for (let edit = 0; edit <= count; edit++) {
    await page.keyboard.type(String(1000 + (edit % 500)));
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowUp');
    if (edit !== 50 && edit !== 500 && edit !== count) continue;
    await page.waitForTimeout(2000);
    await session.send('HeapProfiler.collectGarbage');
    const { usedSize } = (await session.send('Runtime.getHeapUsage')) as { usedSize: number };
    console.log(`  after ${edit} edits on the page    ${(usedSize / MB).toFixed(1)} MB`);
  }
  await browser.close();
  await server.close();
}

const EDITS = Number(process.env.EDITS ?? 2000);
editsOfPrices(EDITS);
await editsOnThePage(EDITS);
