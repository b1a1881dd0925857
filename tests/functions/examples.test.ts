import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import '../host/customFunctions';
import { worksheetFunctions } from '../../src/functions/register';
import { argumentsOf, expectCells } from './formulaText';

/** `@example =HOSE.X(…) gives …` of every worksheet function, as written in its JSDoc. */
const folder = join(__dirname, '../../src/functions');
const examples = readdirSync(folder)
  .filter(name => name.endsWith('.ts'))
  .flatMap(name => [...readFileSync(join(folder, name), 'utf8').matchAll(/@example =HOSE\.([A-Z0-9]+)\((.*)\) gives (.+)$/gm)])
  .map(([, id, args, result]) => ({ id: id!, args: args!, result: result! }));

/** An example that looks parts up names the workbook's catalogue cell; the catalogue's own tests answer those. */
const needsCatalogue = (args: string) => /\b(Catalogue|Hoses!)/.test(args);

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
