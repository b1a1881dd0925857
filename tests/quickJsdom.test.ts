/** @jest-environment ./tests/quickJsdom.mjs */

/** The sheet of the page, with these rules. */
function sheetOf(...rules: string[]): CSSStyleSheet {
  document.head.innerHTML = `<style>${rules.join('\n')}</style>`;
  return document.styleSheets[0]!;
}

function colorOf(html: string): string {
  document.body.innerHTML = html;
  return getComputedStyle(document.querySelector('[data-asked]')!).color;
}

const RED = 'rgb(255, 0, 0)';
const CASES: [rule: string, html: string, isMet: boolean][] = [
  ['.a { color: red }', '<i data-asked class="b a"></i>', true],
  ['.a { color: red }', '<i data-asked class="ab"></i>', false],
  ['.a.b { color: red }', '<i data-asked class="a"></i>', false],
  ['.a .b { color: red }', '<p class="a"><i data-asked class="b"></i></p>', true],
  ['.a > .b { color: red }', '<p class="a"><b><i data-asked class="b"></i></b></p>', false],
  ['.x, .a { color: red }', '<i data-asked class="a"></i>', true],
  ['i { color: red }', '<i data-asked></i>', true],
  ['.a:not(.b) { color: red }', '<i data-asked class="a b"></i>', false],
  ['.a:hover { color: red }', '<i data-asked class="a"></i>', false],
  [':is(.a, .b) { color: red }', '<i data-asked class="b"></i>', true],
  ['.p :is(.a, i) { color: red }', '<p class="p"><i data-asked></i></p>', true],
  ['[class="a"] { color: red }', '<i data-asked class="a"></i>', true],
  ['.a[title="x, y"] { color: red }', '<i data-asked class="a" title="x, y"></i>', true],
  ['#n { color: red }', '<i data-asked id="n"></i>', true],
  ['@media screen { .a { color: red } }', '<i data-asked class="a"></i>', true],
  ['@media print { .a { color: red } }', '<i data-asked class="a"></i>', false],
];

test.each(CASES)('%s for %s: %s', (rule, html, isMet) => {
  sheetOf(rule);
  expect(colorOf(html) === RED).toBe(isMet);
});

test('of two rules the later one counts, whichever class is named first', () => {
  sheetOf('.b { color: blue }', '.a { color: red }');
  expect(colorOf('<i data-asked class="a b"></i>')).toBe(RED);
});

test('rules that are added, put in between or taken away count', () => {
  const sheet = sheetOf('.a { color: blue }');
  const html = '<i data-asked class="a"></i>';
  expect(colorOf(html)).not.toBe(RED);
  sheet.insertRule('.a { color: red }', 1);
  expect(colorOf(html)).toBe(RED);
  sheet.insertRule('i { color: blue }', 1);
  expect(colorOf(html)).toBe(RED);
  sheet.deleteRule(2);
  expect(colorOf(html)).not.toBe(RED);
});

test('what is hidden by a rule of every page or by its own style is hidden', () => {
  document.body.innerHTML = '<p hidden></p><p style="display: none"></p><p></p>';
  const displays = [...document.querySelectorAll('p')].map(each => getComputedStyle(each).display);
  expect(displays).toEqual(['none', 'none', 'block']);
});
