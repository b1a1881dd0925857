import type { MeasureUnit, Quantity } from '../../core/units/measureUnit';
import { headingUnit } from '../../core/units/headingUnit';
import { nameOfCell } from '../../cells/sheetCell';
import { columnLetters } from '../../workbook/a1';
import { endsOfHeading } from '../table/endOfHeading';
import type { FoundTable } from '../table/findTables';
import { headingForms, plainHeading } from '../table/heading';
import { HEADING_WORDS } from '../table/headingWords';
import type { SheetCells } from '../table/sheetCells';
import type { TableAnswers } from '../table/tableAnswers';
import { columnsByRole, headingNames, rivalColumns, type ColumnsByRole } from '../table/tableColumns';
import { correctionKey, type HeadingCorrections } from '../table/headingCorrections';
import { crimperColumn, nameColumns, type KnownParts } from '../table/nameColumns';
import { sizeBeside } from '../table/sizedHose';
import { TableReader } from '../table/tableReader';
import type { TableQuestion } from '../table/tableQuestion';
import {
  JOB_END_ROLES,
  isEndRole,
  isOverallByName,
  JOB_MEASURES,
  JOB_ROLES,
  type JobEndField,
  type EndRole,
  type JobRole,
} from './jobRoles';
import { quantityQuestion } from './jobQuantity';
import { jobRivals } from './jobRivals';

/** A table of job lines: what its columns are, and a reader of its rows. */
export interface JobTable {
  readonly table: FoundTable;
  readonly columns: ColumnsByRole<JobRole>;
  readonly reader: TableReader<JobRole>;
}

const NUMBERED = /^(.*?)[ .,-]*(?:end )?([12])$/i;

/** Ends by number, where both are there: `Die 1` beside `Die 2`. */
function endsByNumber(name: string, headings: readonly string[]): ReturnType<typeof endsOfHeading> {
  const [, rest, number] = NUMBERED.exec(name) ?? [];
  if (!rest) return [];
  const isOther = (heading: string) => {
    const [, of, nth] = NUMBERED.exec(headingUnit(heading, 'length').name) ?? [];
    return of?.toLowerCase() === rest.toLowerCase() && nth !== number;
  };
  return headings.some(isOther) ? [{ end: number === '1' ? 'A' : 'B', rest }] : [];
}

/** Columns of each end: those whose headings name it, and those that hold for both. */
function endColumns(
  { headings, block }: FoundTable,
  taken: ReadonlySet<number>,
  corrections: HeadingCorrections,
): ColumnsByRole<EndRole> {
  const found: Partial<Record<EndRole, number>> = {};
  const names = headingNames(headings);
  headings.forEach((heading, index) => {
    const column = block.column + index;
    if (taken.has(column) || heading === '') return;
    const said = corrections.get(correctionKey(names[index]!));
    if (said !== undefined) {
      if (isEndRole(said)) found[said] ??= column;
      return;
    }
    const { name } = headingUnit(heading, 'length');
    const one = (text: string) => (Object.keys(columnsByRole({ headings: [text], block }, JOB_END_ROLES)) as JobEndField[])[0];
    for (const { end, rest } of [...endsOfHeading(name), ...endsByNumber(name, headings)]) {
      const field = one(rest);
      if (field) {
        found[`${field}${end}`] ??= column;
        return;
      }
    }
    const field = one(name);
    if (field) found[field] ??= column;
  });
  return found;
}

/** What `Machine` means: the crimper where its values are names in Machines, else what the hose is for. */
function machineColumn(cells: SheetCells, table: FoundTable, columns: ColumnsByRole<JobRole>, { isMachine }: KnownParts) {
  const crimper = columns.crimper === undefined ? crimperColumn(cells, table, isMachine) : undefined;
  return crimper === undefined ? {} : { crimper, ...(columns.label === crimper && { label: undefined }) };
}

/** A column `Cut` without a single number holds ticks: what has been cut. */
function withTicks(
  cells: SheetCells,
  table: FoundTable,
  columns: ColumnsByRole<JobRole>,
  corrections: HeadingCorrections,
): ColumnsByRole<JobRole> {
  const { cutLength, ...others } = columns;
  if (cutLength === undefined) return columns;
  const { block, headings } = table;
  const heading = headings[cutLength - block.column]!;
  const filled = Array.from({ length: block.rows - 1 }, (_, i) => nameOfCell(cells.value(block.row + 1 + i, cutLength))).filter(
    Boolean,
  );
  const isLength = filled.length === 0 || filled.some(text => /\d/.test(text));
  if (isLength || plainHeading(heading) !== 'cut' || corrections.has(correctionKey(heading))) return columns;
  const isExact =
    others.status !== undefined && !/^(?:made|crimped|tested)$/.test(plainHeading(headings[others.status - block.column]!));
  return isExact ? others : { ...others, status: cutLength };
}

/**
 * A column of cut lengths in which nothing stands yet gives way to one that is filled in; without one, couplings and overall lengths say what
 * to cut, as if there were no such column.
 */
function withFilledCutLength(cells: SheetCells, table: FoundTable, columns: ColumnsByRole<JobRole>): ColumnsByRole<JobRole> {
  const { cutLength, ...others } = columns;
  const { headings, block } = table;
  const isFilled = (column: number) =>
    Array.from({ length: block.rows - 1 }, (_, i) => block.row + 1 + i).some(
      at =>
        cells.isComputed(at, column) || nameOfCell(cells.value(at, column)) !== '' || typeof cells.value(at, column) === 'object',
    );
  if (cutLength === undefined || isFilled(cutLength)) return columns;
  const own = plainHeading(headings[cutLength - block.column]!);
  // A column of that name that is added beside it is called `Cut length (mm) 2`.
  const again = headings.flatMap((heading, at) => (plainHeading(heading.replace(/ \d$/, '')) === own ? [block.column + at] : []));
  const filled = [...rivalColumns(table, cutLength, 'cutLength'), ...again].find(isFilled);
  if (filled !== undefined) return { ...columns, cutLength: filled };
  const isKnown = others.overall !== undefined && (others.fittingA !== undefined || others.fittingB !== undefined);
  return isKnown ? others : columns;
}

/** Overall lengths without any coupling: are they the lengths to cut? */
function whichLength(reader: TableReader<JobRole>): TableQuestion {
  const heading = reader.heading('overall');
  return {
    asked: 'role',
    heading,
    column: heading,
    sentence: `No column names couplings. Is ${heading} the length to cut?`,
    choices: [
      { value: 'cutLength', label: 'Yes, cut to this length' },
      { value: 'none', label: 'No, couplings come off it' },
    ],
  };
}

/** Columns of numbers without a heading get one to be asked about and corrected by. */
function withNames(cells: SheetCells, table: FoundTable): FoundTable {
  const { block, headings } = table;
  const rows = Array.from({ length: block.rows - 1 }, (_, i) => block.row + 1 + i);
  const hasNumbers = (column: number) => rows.some(row => typeof cells.value(row, column) === 'number');
  const names = headings.map((heading, index) => {
    const column = block.column + index;
    return heading === '' && hasNumbers(column) ? `column ${columnLetters(column)}` : heading;
  });
  return { ...table, headings: names };
}

/** Which column of a table is what to a job line. */
export function jobColumns(
  cells: SheetCells,
  table: FoundTable,
  corrections: HeadingCorrections,
  parts: KnownParts = {},
): ColumnsByRole<JobRole> {
  const named = withFilledCutLength(cells, table, columnsByRole(table, JOB_ROLES, corrections));
  const byWords = withTicks(cells, table, named, corrections);
  const both = { ...byWords, ...nameColumns(cells, table, byWords, parts, corrections) };
  const main = { ...both, ...machineColumn(cells, table, both, parts) };
  const taken = new Set(Object.values(main).filter(column => column !== undefined));
  return { ...endColumns(table, taken, corrections), ...main };
}

/**
 * A table as job lines: at least a hose and a length; undefined where it is no such table.
 * @param proposals units proposed, never taken, where a heading names none
 */
export function jobTable(
  cells: SheetCells,
  found: FoundTable,
  answers: TableAnswers,
  parts: KnownParts,
  proposals: Readonly<Partial<Record<Quantity, MeasureUnit>>> = {},
): JobTable | undefined {
  const table = withNames(cells, found);
  const columns = jobColumns(cells, table, answers.role, parts);
  if (columns.hose === undefined || (columns.overall === undefined && columns.cutLength === undefined)) return undefined;
  const reader = new TableReader<JobRole>(cells, table, columns, JOB_MEASURES, answers, proposals, ['quantity', 'twist'], {
    hose: sizeBeside(cells, table, columns.hose, parts.isHose),
  });
  const hasLength = columns.cutLength !== undefined || columns.fittingA !== undefined || columns.fittingB !== undefined;
  const howMany = quantityQuestion(reader, answers.role);
  // `Hoses` over whole numbers beside `Hose`: one question a column.
  reader.questions.push(...jobRivals(reader, answers.role, parts).filter(({ heading }) => heading !== howMany?.heading));
  if (howMany) reader.questions.push(howMany);
  if (!hasLength && isOverallByName(reader.heading('overall'))) reader.questions.push(whichLength(reader));
  return { table, columns, reader };
}

/** Stock lies beside job lists: a table that names reels, lots or places, and nothing of an assembly, is none of lines to be made. */
export function isStock({ table, columns }: JobTable): boolean {
  const ofAssembly = [columns.cutLength, columns.fittingA, columns.fittingB, columns.due, columns.order];
  if (ofAssembly.some(column => column !== undefined)) return false;
  const forms = table.headings.flatMap(headingForms);
  return (['reel', 'reels', 'lot', 'place', 'lengthLeft', 'made'] as const).some(word =>
    forms.some(form => HEADING_WORDS[word].exact.test(form)),
  );
}
