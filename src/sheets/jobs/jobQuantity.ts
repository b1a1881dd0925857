import { columnLetters } from '../../workbook/a1';
import { statedUnit, UNHEADED } from '../table/heading';
import type { HeadingCorrections } from '../table/headingCorrections';
import { headingNames } from '../table/tableColumns';
import { correctionKey } from '../table/headingCorrections';
import { knownHeading } from '../table/headingRow';
import type { TableReader } from '../table/tableReader';
import type { TableQuestion } from '../table/tableQuestion';

/** Headings of whole numbers that count nothing. */
const NO_COUNT = /price|cost|size|dn|dash|week|day|year|page|code|rev|class|\bno\.?$|number|\bid$|tel|phone/i;
/** `In (m)` counts nothing either. */
const isMeasured = (heading: string) =>
  (['length', 'pressure', 'temperature'] as const).some(quantity => statedUnit(heading, quantity).unit !== undefined);
/** Nobody makes more of one line. */
const MOST = 1000;

const isCount = (least: number) => (cell: unknown) =>
  typeof cell === 'number' && Number.isInteger(cell) && cell >= least && cell <= MOST;

/** What a kind of table counts, in the words of its answers. */
export interface CountWords {
  readonly yes: string;
  readonly no: string;
  /** A row may hold none. */
  readonly least: 0 | 1;
}

const OF_JOBS: CountWords = { yes: 'Yes, that many of each', no: 'No, one of each line', least: 1 };

/** A table without a column of quantities has one of each row, unless some column that is not read may say how many: that is asked. */
export function quantityQuestion<Role extends string>(
  reader: TableReader<Role | 'quantity'>,
  corrections: HeadingCorrections,
  { yes, no, least } = OF_JOBS,
): TableQuestion | undefined {
  if (reader.has('quantity')) return undefined;
  const { headings, block } = reader.table;
  const names = headingNames(headings);
  const used = new Set(Object.values(reader.columns));
  const mayCount = (heading: string, at: number) => {
    const column = block.column + at;
    if (heading === '' || used.has(column)) return false;
    if (NO_COUNT.test(heading) || knownHeading(heading) || isMeasured(heading)) return false;
    const filled = Array.from({ length: block.rows - 1 }, (_, i) => reader.cells.value(block.row + 1 + i, column)).filter(
      cell => cell !== '',
    );
    return filled.length > 0 && filled.every(isCount(least)) && filled.some(cell => cell !== 1);
  };
  const counts = headings.flatMap((heading, at) => (mayCount(heading, at) ? [at] : []));
  const index = counts.find(at => !corrections.has(correctionKey(names[at]!)));
  if (index === undefined) return undefined;
  // A column without a heading is called by its letter alone.
  const called = (at: number) =>
    UNHEADED.test(headings[at]!) ? headings[at]! : `${columnLetters(block.column + at)}: ${headings[at]!}`;
  const name = called(index);
  // `Sets` beside `Pcs per set`: whoever answers must know that one of them is left alone.
  const others = counts.filter(at => at !== index).map(called);
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
