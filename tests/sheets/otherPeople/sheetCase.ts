import { Decimal } from '../../../src/core/units/decimal';
import { measureUnit } from '../../../src/core/units/measureUnit';
import { lengthText } from '../../../src/sheets/table/lengthText';
import { readJobs, type Jobs, type JobWishes } from '../../../src/sheets/jobs/readJobs';
import { isReady, type JobLine } from '../../../src/sheets/jobs/jobLine';
import { rememberAnswer, type Asked, type TableKind } from '../../../src/sheets/table/tableAnswers';
import type { TableQuestion } from '../../../src/sheets/table/tableQuestion';
import type { LeftOutRow, Takeable } from '../../../src/sheets/table/tableRows';
import type { Workbook } from '../../../src/workbook/workbook';
import { fakeWorkbook, type FakeCell, type FakeDetails } from '../../workbook/fakeWorkbook';

export type Rows = readonly (readonly FakeCell[])[];

/** An answer as somebody would click it: what was asked, the heading, the choice. */
export type Answer = readonly [asked: Asked, heading: string, choice: string];

/** A sheet of somebody else, what is selected on it, and what reading it must come to. */
export interface SheetCase {
  readonly name: string;
  readonly rows: Rows;
  readonly details?: FakeDetails;
  /** Default A2. */
  readonly selected?: string;
  readonly take?: readonly Takeable[];
  readonly answers?: readonly Answer[];
  /** Lines that are taken, as toldLine writes them. */
  readonly taken: readonly string[];
  /** `row reason`, with a part of its sentence behind a colon where it matters. */
  readonly leftOut?: readonly string[];
  /** Parts of the sentences of the questions that stay open; with the choices behind ` → ` where they matter. */
  readonly asks?: readonly string[];
}

const mm = measureUnit('length', 'mm')!;
const length = (label: string, found: JobLine['overall']) =>
  found ? [`${label} ${lengthText(found.value, found.unit.symbol)} ${found.unit.symbol}`] : [];

/** `4: Larch DN 12 [Cone A + Cone B], overall 800 mm, cut 640 mm, × 2`; an overall length that is also cut is told once. */
export function toldLine({ row, hose, ends, overall, cutLength, quantity }: JobLine): string {
  const couplings = ends.some(({ fitting }) => fitting !== '')
    ? ` [${ends.map(({ fitting }) => fitting || '–').join(' + ')}]`
    : '';
  const lengths = [...(overall === cutLength ? [] : length('overall', overall)), ...length('cut', cutLength)];
  return [`${row}: ${hose}${couplings}`, ...lengths, `× ${quantity}`].join(', ');
}

/** Whether what was left out is what was expected: row and reason, and the part of a sentence. */
export function expectLeftOut(found: readonly LeftOutRow[], expected: readonly string[]): void {
  const message = [...found].sort((a, b) => a.row - b.row).map(({ row, reason, sentence }) => ({ row, reason, sentence }));
  const wanted = expected.map(each => {
    const [, row, reason, part] = /^(\d+) ([a-z ]+)(?:: (.*))?$/.exec(each)!;
    return { row: Number(row), reason, sentence: part === undefined ? expect.anything() : expect.stringContaining(part) };
  });
  expect(message.map(each => ({ ...each, sentence: each.sentence ?? '' }))).toEqual(wanted);
}

/** `sentence` of each question, its choices behind ` → `. */
export function expectQuestions(found: readonly TableQuestion[], expected: readonly string[]): void {
  const message = found.map(({ sentence, choices }) => `${sentence} → ${choices.map(({ label }) => label).join(' / ')}`);
  expect(message).toEqual(expected.map(part => expect.stringContaining(part)));
}

/** A workbook with one sheet of that name, and the answers that somebody gave. */
export async function openSheet(
  kind: TableKind,
  sheet: string,
  from: SheetCase,
  others: Record<string, Rows> = {},
): Promise<Workbook> {
  const { rows, details, selected = 'A2', answers = [] } = from;
  const { workbook } = fakeWorkbook({ [sheet]: rows, ...others }, { sheet, address: selected }, details);
  for (const [asked, heading, choice] of answers) await rememberAnswer(workbook, kind, sheet, asked, heading, choice);
  return workbook;
}

export const STEP_OF_1_MM: JobWishes = { step: { value: new Decimal(1), unit: mm } };

/** Reads a job sheet as all views do. */
export async function readJobCase(from: SheetCase, others: Record<string, Rows> = {}): Promise<Jobs> {
  const workbook = await openSheet('jobs', 'Jobs', from, others);
  return readJobs(workbook, { ...STEP_OF_1_MM, take: new Set(from.take ?? []) });
}

/** Reads a job sheet and compares it with what it must come to. */
export async function expectJobs(from: SheetCase, others: Record<string, Rows> = {}): Promise<void> {
  const { lines, report, questions } = await readJobCase(from, others);
  expect(lines.filter(line => isReady(line) && line.quantity !== 0).map(toldLine)).toEqual(from.taken);
  expectLeftOut(report.leftOut, from.leftOut ?? []);
  expectQuestions(questions, from.asks ?? []);
}
