import type { Catalogue } from '../../../src/core/catalogue/catalogue';
import { blockOf } from '../../../src/workbook/a1';
import { NO_OPTIONS } from '../../../src/sheets/crimps/crimpReadOptions';
import { isUnmeasured } from '../../../src/sheets/crimps/crimpRow';
import { crimpSheetOf } from '../../../src/sheets/crimps/crimpSheet';
import { crimpReport, crimpRowsOf, measuredCrimps, whyNotAnalysed } from '../../../src/sheets/crimps/readCrimpRows';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { expectLeftOut, expectQuestions, type SheetCase } from './sheetCase';

/** A sheet of crimps of somebody else, and what reading it must come to. */
export interface CrimpCase extends SheetCase {
  readonly catalogue?: Catalogue;
  /** Crimps that are not measured yet, as `row title`. */
  readonly waiting?: readonly string[];
  /** Parts of the notes about the table. */
  readonly notes?: readonly string[];
}

/** `4 A: 24.9 24.91 24.88 24.9 mm, 24.9 ± 0.1`, as the sheet's own unit has it. */
export function message(read: ReturnType<typeof crimpRowsOf>): string[] {
  return measuredCrimps(read, read.unit).map(({ row, end, combination, machine, readings, target, tolerance, largestSpread }) => {
    const of = [combination === 'All crimps' ? '' : combination, machine && `on ${machine}`].filter(Boolean).join(' ');
    const spread = largestSpread ? `, spread ${largestSpread}` : '';
    return `${row}${end && ` ${end}`}: ${of && `${of}: `}${readings.join(' ')} ${read.unit}, ${target.toDecimalPlaces(6)} ± ${tolerance.toDecimalPlaces(6)}${spread}`;
  });
}

/** Reads a sheet of crimps and compares it with what it must come to. */
export async function expectCrimps(from: CrimpCase): Promise<void> {
  const { rows, details, selected = 'A2', answers = [], catalogue } = from;
  const { workbook } = fakeWorkbook({ Bench: rows }, { sheet: 'Bench', address: selected }, details);
  const said = (asked: string) =>
    new Map(answers.flatMap(([what, heading, choice]) => (what === asked ? [[heading.toLowerCase(), choice] as const] : [])));
  const sheet = crimpSheetOf(
    {
      used: (await workbook.used('Bench'))!,
      layout: await workbook.layout('Bench'),
      answers: { role: said('role'), unit: said('unit'), comma: said('comma'), meaning: said('meaning') },
      catalogue,
    },
    blockOf(selected)!,
  );
  const read = crimpRowsOf(sheet, { ...NO_OPTIONS, take: new Set(from.take ?? []) });
  expect(message(read)).toEqual(from.taken);
  expectLeftOut(crimpReport(read, whyNotAnalysed).leftOut, from.leftOut ?? []);
  expectQuestions(read.questions, from.asks ?? []);
  if (from.notes) expect(read.notes).toEqual(from.notes.map(part => expect.stringContaining(part)));
  expect(read.rows.filter(isUnmeasured).map(({ row, title }) => `${row} ${title}`)).toEqual(from.waiting ?? []);
}
