/** @jest-environment ./tests/quickJsdom.mjs */
import { existsSync, readFileSync } from 'node:fs';
import '../host/customFunctions';
import { worksheetFunctions } from '../../src/functions/register';
import { builtFile } from '../builtFile';
import { expectCells } from '../functions/formulaText';

const ids = Object.keys(worksheetFunctions);
const index = () => readFileSync(builtFile('help.html'), 'utf8');
const pageOf = (id: string) => readFileSync(builtFile(`help/${id}.html`), 'utf8');
const documentOf = (html: string) => new DOMParser().parseFromString(html, 'text/html');

/** The picture of a sheet on a page: what stands in each cell, and the formula that gives the shaded ones. */
function sheetOf(id: string) {
  const page = documentOf(pageOf(id));
  const rows = [...page.querySelectorAll('.sheet tbody tr')].map(row => [...row.querySelectorAll('td')]);
  const formula = page.querySelector('figure .formula code')!.textContent!;
  return { rows, formula, place: page.querySelector('figure .formula b')!.textContent! };
}

const valueOf = (text: string) => (text === '' || Number.isNaN(Number(text)) ? text : Number(text));

/** What the formula's arguments hold, read off the picture; undefined where it names a catalogue or other sheets. */
function argumentsOf(rows: readonly (readonly Element[])[], formula: string): unknown[][][] | undefined {
  const written = /\((.*)\)$/.exec(formula)![1]!.split(', ');
  if (written.some(text => /Catalogue|!/.test(text))) return undefined;
  return written.map(text => {
    const [, left, top, right = left, bottom = top] = /^([A-Z])(\d+)(?::([A-Z])(\d+))?$/.exec(text) ?? [];
    if (!left) return [[text.replace(/"/g, '')]];
    const column = (letter: string) => letter.charCodeAt(0) - 65;
    return rows
      .slice(Number(top) - 1, Number(bottom))
      .map(row => row.slice(column(left), column(right!) + 1).map(cell => valueOf(cell.textContent!)));
  });
}

test('every worksheet function has a page of its own, and the first page lists it', () => {
  expect(ids.filter(id => !existsSync(builtFile(`help/${id}.html`)))).toEqual([]);
  const links = [...documentOf(index()).querySelectorAll('li a')].map(link => link.getAttribute('href'));
  expect(links.sort()).toEqual(ids.map(id => `help/${id}.html`).sort());
});

test('links between the pages lead to pages', () => {
  const from = ids.flatMap(id =>
    [...documentOf(pageOf(id)).querySelectorAll('a')].map(link => `help/${link.getAttribute('href')}`),
  );
  expect([...new Set(from)].map(path => path.replace('help/../', '')).filter(path => !existsSync(builtFile(path)))).toEqual([]);
});

test('a page has one main part, the caution, and no colour that a light page cannot show dark enough', () => {
  for (const html of [index(), ...ids.map(pageOf)]) {
    expect(html.match(/<main>/g)).toHaveLength(1);
    expect(html).toMatch(/makers' current data come first/);
    // GrayText is for what cannot be used: 3.9 : 1 on white in Chromium, WCAG 2.2 asks 4.5 : 1 of text (1.4.3).
    expect(html).not.toMatch(/[^-]color: ?GrayText/);
  }
});

describe('the picture of a sheet', () => {
  const called = ids.filter(id => argumentsOf(sheetOf(id).rows, sheetOf(id).formula) !== undefined);

  test('shows the cells of the arguments for all functions but those that look parts up', () =>
    expect(called.length).toBeGreaterThanOrEqual(ids.length - 9));

  test.each(called)('%s gives the shaded cells from the cells beside them', async id => {
    const { rows, formula, place } = sheetOf(id);
    const call = (worksheetFunctions as Record<string, (...cells: any[]) => unknown>)[id]!;
    const given = (await call(...argumentsOf(rows, formula)!)) as unknown[][];
    const shaded = rows.map(row => row.filter(cell => cell.className === 'result')).filter(row => row.length > 0);
    expect(rows[1]!.findIndex(cell => cell.className === 'result')).toBe(place.charCodeAt(0) - 65);
    expect(shaded[0]).toHaveLength(given[0]!.length);
    shaded.forEach((row, index) => {
      const words = row.map(cell => cell.textContent!);
      words.forEach((word, column) => word !== '' && expectCells([given[index]![column]], word));
    });
  });
});
