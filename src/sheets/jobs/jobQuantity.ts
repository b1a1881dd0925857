import { countOfCell } from '../../cells/sheetCell';
import { TradeError } from '../../core/tradeError';
import { headingUnit, splitHeading } from '../../core/units/headingUnit';
import { anyMeasureUnit } from '../../core/units/measureUnit';
import { isDateFormat } from '../../core/units/sheetDate';
import { columnLetters } from '../../workbook/a1';
import type { CellValue } from '../../workbook/workbook';
import { UNHEADED } from '../table/heading';
import type { HeadingCorrections } from '../table/headingCorrections';
import { headingNames } from '../table/tableColumns';
import { correctionKey } from '../table/headingCorrections';
import { knownHeading } from '../table/headingRow';
import type { TableReader } from '../table/tableReader';
import { isUnitsRow } from '../table/tableRows';
import type { TableQuestion } from '../table/tableQuestion';
import { isEndRole } from './jobRoles';

/** Words of a number of things, whatever else the heading says: `Qty this week`, `Number of hoses`. */
const SAYS_HOW_MANY =
  /\bq(?:uanti|n)?ty\b|quantit|\bneed|\bwanted\b|\brequired\b|\b(?:number|nos?\.?) of\b|how many|\b(?:pcs|pieces)\b(?! (?:per|a)\b)/i;
/** Headings of whole numbers that count nothing. */
const NO_COUNT =
  /\b(?:size|dn\d*|dash|weeks?|days?|years?|pages?|rev|class|serial|tel)\b|code\b|phone\b|\b(?:no|nr|nbr|num)\.?$|#$|number|\bid$/i;
/** What is measured or paid: no quantity, not even where one is spoken of. */
const MEASURED =
  /\b(?:length|date|prices?|costs?|rate|value|labou?r|margin|discount|weight|mass|diameter|dia|minutes|hours|eur|usd|gbp|chf)\b|[€£$¥]/i;
/** Words of other tables that in a job list may well say how many. */
const MAY_COUNT = /^(?:batch|hoses)$/i;
/** Longer whole numbers are numbers of something. */
const MOST = 99_999;

function isCount(cell: CellValue, format: string): boolean {
  if (typeof cell === 'object' || typeof cell === 'boolean' || isDateFormat(format) || /[€£¥]|\$(?!-)/.test(format)) return false;
  if (typeof cell === 'number') return Number.isInteger(cell) && cell >= 0 && cell <= MOST;
  try {
    const count = countOfCell(cell, 'quantity', { comma: 'thousands' });
    return count !== undefined && count <= MOST;
  } catch (error) {
    if (error instanceof TradeError) return false;
    throw error;
  }
}

function mayHeadCounts(heading: string): boolean {
  const { bracket } = splitHeading(heading);
  const hasUnit = headingUnit(heading, 'length').unit ?? (bracket === undefined ? undefined : anyMeasureUnit(bracket));
  if (hasUnit || MEASURED.test(heading)) return false;
  return SAYS_HOW_MANY.test(heading) || MAY_COUNT.test(heading) || !(NO_COUNT.test(heading) || knownHeading(heading));
}

/** Whether the cells of a column read as numbers of things; where its heading says so, one of them is enough. */
function holdsCounts({ table, cells }: Pick<TableReader<string>, 'table' | 'cells'>, column: number, isSaid: boolean): boolean {
  const { block } = table;
  const first = block.row + (isUnitsRow(cells, table, block.row + 1) ? 2 : 1);
  const rows = Array.from({ length: block.row + block.rows - first }, (_, i) => first + i);
  const filled = rows.filter(row => cells.value(row, column) !== '');
  const isCounted = (row: number) => isCount(cells.value(row, column), cells.format(row, column));
  const areCounts = isSaid ? filled.some(isCounted) : filled.length > 0 && filled.every(isCounted);
  return areCounts && filled.some(row => cells.value(row, column) !== 1);
}

/** What a kind of table counts, in the words of its answers. */
export interface CountWords {
  readonly yes: string;
  readonly no: string;
}

const OF_JOBS: CountWords = { yes: 'Yes, that many of each', no: 'No, one of each line' };

/** A table without a column of quantities has one of each row, unless some column that is not read may say how many: that is asked. */
export function quantityQuestion<Role extends string>(
  reader: TableReader<Role | 'quantity'>,
  corrections: HeadingCorrections,
  { yes, no } = OF_JOBS,
): TableQuestion | undefined {
  if (reader.has('quantity')) return undefined;
  const { headings, block } = reader.table;
  const names = headingNames(headings);
  const roles = Object.entries(reader.columns);
  // `Wanted` may be the diameter of a crimp: beside lines without a quantity it is asked about all the same.
  const isUsed = (column: number, isSaid: boolean) => roles.some(([role, at]) => at === column && !(isSaid && isEndRole(role)));
  const found = headings.flatMap((heading, at) => {
    const column = block.column + at;
    const isSaid = SAYS_HOW_MANY.test(heading);
    if (heading === '' || isUsed(column, isSaid) || !mayHeadCounts(heading)) return [];
    if (corrections.has(correctionKey(names[at]!))) return [];
    return holdsCounts(reader, column, isSaid) ? [{ at, isSaid }] : [];
  });
  const index = (found.find(({ isSaid }) => isSaid) ?? found[0])?.at;
  if (index === undefined) return undefined;
  // A column without a heading is called by its letter alone.
  const called = (at: number) =>
    UNHEADED.test(headings[at]!) ? headings[at]! : `${columnLetters(block.column + at)}: ${headings[at]!}`;
  const name = called(index);
  // `Sets` beside `Pcs per set`: whoever answers must know that one of them is left alone.
  const others = found.filter(({ at }) => at !== index).map(({ at }) => called(at));
  const beside = others.length > 0 ? ` Whole numbers are in ${others.join(' and ')}, too: they are not multiplied with it.` : '';
  return {
    asked: 'role',
    heading: names[index]!,
    column: name,
    sentence: `No column says how many. Is ${name} the quantity?${beside}`,
    choices: [
      { value: 'quantity', label: yes },
      { value: 'none', label: no },
    ],
    refusal: `no column says how many: say whether ${name} is the quantity`,
  };
}
