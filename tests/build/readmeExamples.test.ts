import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { cellsOf, treeTables } from '../core/catalogue/treeCatalogue';
import { argumentsOf, expectCells } from '../functions/formulaText';
import { excelCall, metadata } from './excelCall';

/** Rows of the README's table of functions: `=HOSE.ID(arguments)` → what it gives. */
const readme = readFileSync(join(__dirname, '../../README.md'), 'utf8');
const examples = [...readme.matchAll(/^\| ([A-Z]+) \|.*\| `=HOSE\.([A-Z]+)\((.*)\)` → (.+) \|$/gm)].map(
  ([, name, id, args, message]) => ({ name: name!, id: id!, args: args!, message: message! }),
);

test('the README has one row for every function of functions.json', () => {
  expect(examples.map(({ name }) => name).sort()).toEqual(metadata.functions.map(({ id }) => id).sort());
  expect(examples.every(({ name, id }) => name === id)).toBe(true);
});

// What CATALOGUE gives depends on whole tables: its example shows the form of a handle.
test('the handle of a catalogue looks as the README shows it', async () => {
  const { message } = examples.find(({ id }) => id === 'CATALOGUE')!;
  const form = /^CAT-[0-9a-f]{8} \(mm, bar; \d+ hoses, \d+ fittings, \d+ crimps\)$/;
  expect(message.replaceAll('`', '')).toMatch(form);
  const [[handle]] = (await excelCall('CATALOGUE', ...cellsOf(treeTables))) as [[string]];
  expect(handle).toMatch(/^CAT-[0-9a-f]{8} \(mm, bar; \d+ hoses, \d+ fittings, \d+ crimps\b/);
});

test.each(examples.filter(({ id }) => id !== 'CATALOGUE'))(
  'the built script answers the README’s =HOSE.$id($args) with $told',
  async ({ id, args, message }) => {
    const Catalogue = await excelCall('CATALOGUE', ...cellsOf(treeTables));
    const rows = await excelCall(id, ...argumentsOf(args, { Catalogue }));
    const [, firstRow] = /^a table: (.*)$/.exec(message) ?? [];
    if (firstRow === undefined) expectCells(rows.flat(), message.replace(/ \(invented: never crimp from it\)$/, ''));
    else expectCells(rows[1]!, firstRow);
  },
);
