import { OFFICE_FILE, officeFileAsker, type Fetcher } from '../../../src/host/catalogueFile/officeFile';

const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
const HOUR = 3_600_000;

interface Given {
  status?: number;
  body?: string;
  headers?: Record<string, string>;
}

/** A host of static files that can be changed, and what it was asked. */
function host(first: Given | 'offline') {
  const state = { given: first, now: 0, asked: [] as unknown[][] };
  const fetcher: Fetcher = async (...asked) => {
    state.asked.push(asked);
    if (state.given === 'offline') throw new TypeError('Failed to fetch');
    const { status = 200, body = 'PK…', headers = { 'content-type': XLSX, etag: '"1"' } } = state.given;
    return new Response(body, { status, headers });
  };
  return { state, ask: officeFileAsker(fetcher, () => state.now) };
}

test('asks for the file beside the page so that the browser may answer "not modified" (RFC 9111, 5.2.1.4)', async () => {
  const { state, ask } = host({});
  expect(await ask()).toMatchObject({ status: 'there', name: 'catalogue/current.xlsx', tag: '"1"' });
  expect(state.asked).toEqual([[OFFICE_FILE, { cache: 'no-cache' }]]);
});

test('asks no more than once an hour, whoever wants it; an unchanged file is the same object, a changed one is another', async () => {
  const { state, ask } = host({});
  const [first, second] = await Promise.all([ask(), ask()]);
  expect(second).toBe(first);
  state.now = HOUR - 1;
  await ask();
  expect(state.asked).toHaveLength(1);
  state.now = HOUR;
  expect(await ask()).toBe(first);
  expect(state.asked).toHaveLength(2);
  state.given = { headers: { 'content-type': XLSX, etag: '"2"' } };
  state.now = 2 * HOUR;
  expect(await ask()).toMatchObject({ status: 'there', tag: '"2"' });
});

test('what came an hour ago is kept where the host cannot be reached any more', async () => {
  const { state, ask } = host({});
  const first = await ask();
  state.given = 'offline';
  state.now = HOUR;
  expect(await ask()).toBe(first);
});

test('of a host without ETag the content itself tells whether the file is the same', async () => {
  const { state, ask } = host({ headers: {} });
  const first = await ask();
  state.now = HOUR;
  expect(await ask()).toBe(first);
  state.given = { body: 'PK other', headers: {} };
  state.now = 2 * HOUR;
  expect(await ask()).not.toBe(first);
});

test.each<[string, Given | 'offline', object]>([
  ['no connection', 'offline', { status: 'unreachable', reason: 'no connection' }],
  ['a host that is down', { status: 503 }, { status: 'unreachable', reason: 'its host answers with error 503' }],
  ['no such file', { status: 404 }, { status: 'none' }],
  [
    'no such file, said with a page',
    { status: 404, body: '<!doctype html>', headers: { 'content-type': 'text/html' } },
    { status: 'none' },
  ],
  [
    'a page in place of the file',
    { body: '<!doctype html>', headers: { 'content-type': 'text/html; charset=utf-8' } },
    { status: 'unusable', reason: 'catalogue/current.xlsx is a web page, not a workbook' },
  ],
  [
    'a file that is too large, known before it travels',
    { headers: { 'content-type': XLSX, 'content-length': String(60 * 2 ** 20) } },
    { status: 'unusable', reason: 'catalogue/current.xlsx has 60 MB, more than 50: leave out what is not parts data' },
  ],
])('%s', async (_, given, expected) => {
  expect(await host(given).ask()).toEqual(expected);
});
