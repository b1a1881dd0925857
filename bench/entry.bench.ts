import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { IUniverInstanceService } from '@univerjs/core';
import { Decimal } from '../src/core/units/decimal';
import { measureUnit } from '../src/core/units/measureUnit';
import { headlessWorkbook } from '../src/preview/headless/headlessWorkbook';
import { loadScript } from '../src/preview/headless/loadScript';
import { hostFunctions } from '../src/preview/host/hostFunctions';
import { UniverWorkbook } from '../src/preview/univerWorkbook';
import { readXlsx } from '../src/preview/xlsx/readXlsx';
import { readCrimpSheet } from '../src/sheets/crimps/crimpSheet';
import { crimpRowsOf } from '../src/sheets/crimps/readCrimpRows';
import { readJobs } from '../src/sheets/jobs/readJobs';
import { fillPiece, typedOf } from '../src/sheets/pieces/fillPiece';
import { rememberJobSheet } from '../src/sheets/pieces/jobsOfPieces';
import { pieceBook } from '../src/sheets/pieces/pieceBook';
import { planPieces } from '../src/sheets/pieces/planPieces';
import { readPieces } from '../src/sheets/pieces/readPieces';
import { addressOf } from '../src/workbook/a1';

const LINES = 600;
const MOMENT = '2026-10-05 07:12';
const dist = join(process.cwd(), 'dist');
const sample = new Uint8Array(readFileSync('samples/catalogue.xlsx'));
const functions = hostFunctions(
  JSON.parse(readFileSync(join(dist, 'functions.json'), 'utf8')),
  loadScript(readFileSync(join(dist, 'functions.js'), 'utf8'), name =>
    existsSync(join(dist, name)) ? readFileSync(join(dist, name)) : undefined,
  ),
);
const { data } = await readXlsx(sample);
const open = headlessWorkbook(data, functions);
open.univer.__getInjector().get(IUniverInstanceService).focusUnit(data.id);
const workbook = new UniverWorkbook(open.univer, open.api);
await open.calculate();

/** The lines of the sample week, again and again, 3 or 4 pieces each: 2,100 pieces. */
const week = (await workbook.used('Week'))!.values.slice(4);
const [headings, ...lines] = week;
const rows = Array.from({ length: LINES }, (_, k) => {
  const line = lines[k % lines.length]!.map((cell, column) => (headings![column] === 'Assembly no.' ? `A${k + 1}` : cell));
  return line.map((cell, column) => {
    if (headings![column] === 'Line') return k + 1;
    return headings![column] === 'Quantity' ? 3 + (k % 2) : (cell as string | number);
  });
});
const block = { row: 0, column: 0, rows: LINES + 1, columns: headings!.length + 1 };
const values = [[...(headings as string[]), 'Status'], ...rows.map(row => [...row, ''])];
await workbook.write([
  { kind: 'addSheet', sheet: 'Jobs 600' },
  { kind: 'values', at: { sheet: 'Jobs 600', address: addressOf(block) }, values },
]);
const mm = measureUnit('length', 'mm')!;
const choice = { sheet: 'Jobs 600', block: { row: 1, column: 0, rows: 1, columns: 1 }, isChoice: false };
const jobs = await readJobs(workbook, { step: { value: new Decimal(1), unit: mm }, whateverStatus: true }, choice);
const reels = jobs.lines.map(({ row, line, quantity, cutLength }, index) => ({
  rack: { lot: `L${index}`, place: '', reel: `${index}` },
  cuts: Array.from({ length: quantity! }, (_, k) => ({
    length: cutLength!.value.toDecimalPlaces(0),
    line: { row, line },
    piece: k + 1,
  })),
}));
const plan = planPieces(await pieceBook(workbook), reels, jobs.lines, {
  catalogue: jobs.catalogue,
  unit: 'mm',
  machine: '',
  proofFactor: new Decimal(2),
  useBy: '',
  pressureUnit: 'bar',
  prefix: '',
  now: MOMENT,
});
await workbook.write(plan.writing.changes);
await rememberJobSheet(workbook, 'Jobs 600');

const processor = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
const median = (all: readonly number[]) => [...all].sort((a, b) => a - b)[Math.floor(all.length / 2)]!;
const [saves, writes, shows, reads]: [number[], number[], number[], number[]] = [[], [], [], []];
const ROUNDS = 9;
let shown = (await readPieces(workbook))!;
console.log(`${jobs.lines.length} lines, ${shown.pieces.length} pieces`);
for (let round = 0; round < ROUNDS; round++) {
  const started = processor();
  const { pieces } = await pieceBook(workbook);
  const piece = pieces!.pieces[round * 7]!;
  const typed = { ...typedOf(pieces!, piece), finished: String(1246 + round), by: 'P. Plain' };
  const writing = await fillPiece(workbook, pieces!, piece, typed, MOMENT);
  const planned = processor();
  await workbook.write(writing.changes);
  const written = processor();
  const { piece: number } = shown.pieces[round * 7 + 1]!;
  shown = (await readPieces(workbook))!;
  const found = shown.pieces.find(each => each.piece === number)!;
  const ended = processor();
  await workbook.select({ sheet: 'Pieces', address: `A${found.row}` });
  crimpRowsOf((await readCrimpSheet(workbook))!);
  reads.push(processor() - ended);
  saves.push(planned - started);
  writes.push(written - planned);
  shows.push(ended - written);
}
console.log(`| step | median | longest |\n| --- | --- | --- |`);
for (const [name, all] of [
  ['worked out before the save', saves],
  ['written', writes],
  ['next piece shown', shows],
  ['its crimps read', reads],
] as const) {
  console.log(`| ${name} | ${Math.round(median(all))} ms | ${Math.round(Math.max(...all))} ms |`);
}
open.dispose();
process.exit(0);
