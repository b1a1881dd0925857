import type { Page } from 'playwright-core';
import { goToCell, openSheet, settled, tryOut } from '../tests/browser/tryOut';

/* What the try-out page keeps after many edits: somebody types overall lengths over and over, from which cut lengths, prices and checks follow. */

const EDITS = Number(process.env.EDITS ?? 2000);
const COUNTED = [0, 50, 500, EDITS];
const MB = 2 ** 20;
/** An overall length on the sheet This week: cut length, rating, check and price of its line follow. */
const LENGTH = 'E11';

async function heap(page: Page): Promise<number> {
  const client = await page.context().newCDPSession(page);
  await client.send('HeapProfiler.enable');
  for (let k = 0; k < 3; k++) await client.send('HeapProfiler.collectGarbage');
  const { usedSize } = (await client.send('Runtime.getHeapUsage')) as { usedSize: number };
  await client.detach();
  return usedSize / MB;
}

const opened = await tryOut({ width: 1440, height: 860 });
const { page } = opened;
await openSheet(page, 'This week');
await page.locator('.sheet #__editor___INTERNAL_EDITOR__DOCS_NORMAL').focus();
await goToCell(page, LENGTH);
for (let edit = 0; edit <= EDITS; edit++) {
  if (COUNTED.includes(edit)) {
    await settled(page);
    await page.waitForTimeout(1000);
    console.log(`  after ${edit} edits of a length    ${(await heap(page)).toFixed(1)} MB`);
  }
  await page.keyboard.type(String(900 + (edit % 90)));
  await page.keyboard.press('Enter');
  await settled(page);
  await page.keyboard.press('ArrowUp');
}
console.log(`  left at ${await page.locator('.status .sentence').textContent()}`);
if (opened.complaints.length > 0) throw new Error(opened.complaints.join('\n'));
await opened.close();
