import type { Browser, Page } from 'playwright-core';
import { launch } from './launch';
import { serveDist } from './serveDist';

let browser: Browser;
let server: Awaited<ReturnType<typeof serveDist>>;

beforeAll(async () => {
  [browser, server] = await Promise.all([launch(), serveDist()]);
});

afterAll(async () => {
  await browser.close();
  await server.close();
});

/** Opens a page of dist/, and whatever it asks of elsewhere gets an answer that would work. */
async function open(name: string): Promise<{ page: Page; asked: string[] }> {
  const page = await browser.newPage();
  const asked: string[] = [];
  await page.route(/^https:/, route => {
    asked.push(route.request().url());
    return route.fulfill({ contentType: 'text/javascript', body: 'globalThis.fromElsewhere = true' });
  });
  await page.goto(`${server.url}${name}`);
  return { page, asked };
}

/** What an attacker who got markup into the page would try; true where it worked. */
function attempts(page: Page) {
  return page.evaluate(async () => {
    const ran = async (element: HTMLElement) => {
      document.body.append(element);
      await new Promise(done => setTimeout(done, 300));
      return 'inline' in globalThis || 'fromElsewhere' in globalThis;
    };
    const script = (part: Partial<HTMLScriptElement>) => ran(Object.assign(document.createElement('script'), part));
    const handler = document.createElement('img');
    handler.setAttribute('onerror', 'globalThis.inline = true');
    handler.src = 'data:,';
    return {
      inline: await script({ textContent: 'globalThis.inline = true' }),
      handler: await ran(handler),
      elsewhere: await script({ src: 'https://elsewhere.example/script.js' }),
      fetched: await fetch('https://elsewhere.example/data').then(
        () => true,
        () => false,
      ),
      evaluated: await (async () => {
        try {
          return new Function('return true')() as boolean;
        } catch {
          return false;
        }
      })(),
      framed: await new Promise(done => {
        document.addEventListener('securitypolicyviolation', () => done(false), { once: true });
        const frame = Object.assign(document.createElement('iframe'), { src: 'https://elsewhere.example/' });
        document.body.append(frame);
        setTimeout(() => done(true), 2000);
      }),
    };
  });
}

test.each(['preview.html', 'help.html', 'help/CRIMPCHECK.html'])(
  '%s runs no script but its own and asks nothing of elsewhere',
  async name => {
    const { page, asked } = await open(name);
    expect(await attempts(page)).toEqual({
      ...{ inline: false, handler: false, elsewhere: false, fetched: false, evaluated: false, framed: false },
    });
    expect(asked).toEqual([]);
  },
);

test('the help page keeps its look', async () => {
  const { page } = await open('help.html');
  expect(await page.evaluate(() => getComputedStyle(document.querySelector('code')!).fontFamily)).toContain('Consolas');
});

test('the search of the help finds functions by words of their arguments and results', async () => {
  const { page } = await open('help.html');
  const shown = () => page.locator('li:visible a').allTextContents();
  expect((await shown()).length).toBeGreaterThan(25);
  await page.getByLabel('Search the functions').fill('Dial trial');
  expect(await shown()).toEqual(['NEXTDIAL', 'TRIALDIAL']);
  expect(await page.getByRole('status').textContent()).toBe('2 found');
  await page.getByLabel('Search the functions').fill('no such word');
  expect(await page.getByRole('status').textContent()).toBe('No function has all these words.');
  await page.getByLabel('Search the functions').fill('cutplan');
  await page.getByRole('link', { name: 'CUTPLAN' }).click();
  await page.waitForURL('**/help/CUTPLAN.html');
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('CUTPLAN');
});
