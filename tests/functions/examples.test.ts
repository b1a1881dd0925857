import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import '../host/customFunctions';
import { worksheetFunctions } from '../../src/functions/register';

/** `@example =HOSE.X(…) gives …` of every worksheet function, as written in its JSDoc. */
const folder = join(__dirname, '../../src/functions');
const examples = readdirSync(folder)
  .filter(name => name.endsWith('.ts'))
  .flatMap(name => [...readFileSync(join(folder, name), 'utf8').matchAll(/@example =HOSE\.([A-Z0-9]+)\((.*)\) gives (.+)$/gm)])
  .map(([, id, args, result]) => ({ id: id!, args: args!, result: result! }));

/** An example that looks parts up names the workbook's catalogue cell; the catalogue's own tests answer those. */
const needsCatalogue = (args: string) => /\b(Catalogue|Hoses!)/.test(args);

const LITERAL = /\s*(?:\{[^}]*\}|"[^"]*"|[^,{"]+)/g;

/** `{1,2;3,4}`, `"text"`, `12.5` or an omitted argument as the block of cells a host passes. */
function blockOf(literal: string): any[][] | null {
  if (literal.trim() === '') return null;
  if (literal.startsWith('{')) {
    const rows = literal.slice(1, -1).split(';');
    return rows.map(row => row.split(',').map(cell => valueOf(cell)));
  }
  return [[valueOf(literal)]];
}

function valueOf(literal: string): unknown {
  const text = literal.trim();
  if (text.startsWith('"')) return text.slice(1, -1);
  return text === '' ? null : Number(text);
}

function argumentsOf(args: string): (any[][] | null)[] {
  return [...args.replace(/,(?=\s*,)/g, ', "\u0000"').matchAll(LITERAL)].map(([literal]) =>
    literal.includes('\u0000') ? null : blockOf(literal.trim()),
  );
}

/** Cells in reading order, as an example tells them: numbers to the digits it shows. */
function expectCells(cells: unknown[], told: string): void {
  const words = told.split(/, | and /).map(word => word.trim());
  expect(cells.length).toBeGreaterThanOrEqual(words.length);
  words.forEach((word, index) => {
    if (word === '' || Number.isNaN(Number(word))) expect(cells[index]).toBe(word);
    else expect(cells[index]).toBeCloseTo(Number(word), word.split('.')[1]?.length ?? 0);
  });
}

test('every worksheet function has an example in its JSDoc', () => {
  const shown = new Set(examples.map(({ id }) => id));
  expect(Object.keys(worksheetFunctions).filter(id => !shown.has(id))).toEqual([]);
});

test.each(examples.filter(({ args }) => !needsCatalogue(args)))(
  '=HOSE.$id($args) gives $result',
  async ({ id, args, result }) => {
    const worksheetFunction = (worksheetFunctions as Record<string, (...cells: any[]) => unknown>)[id]!;
    const rows = (await worksheetFunction(...argumentsOf(args))) as unknown[][];
    expectCells(rows.flat(), result);
  },
);

test('the README shows every worksheet function, with its example', () => {
  const readme = readFileSync(join(__dirname, '../../README.md'), 'utf8');
  const missing = Object.keys(worksheetFunctions).filter(id => !readme.includes(`=HOSE.${id}(`));
  expect(missing).toEqual([]);
});
