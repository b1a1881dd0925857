import { columnLetters } from '../../workbook/a1';
import { statedUnit } from '../table/heading';
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
  const index = headings.findIndex((heading, at) => {
    const column = block.column + at;
    if (heading === '' || used.has(column) || corrections.has(correctionKey(names[at]!))) return false;
    if (NO_COUNT.test(heading) || knownHeading(heading) || isMeasured(heading)) return false;
    const filled = Array.from({ length: block.rows - 1 }, (_, i) => reader.cells.value(block.row + 1 + i, column)).filter(
      cell => cell !== '',
    );
    return filled.length > 0 && filled.every(isCount(least)) && filled.some(cell => cell !== 1);
  });
  if (index < 0) return undefined;
  // A column without a heading is called by its letter alone.
  const heading = headings[index]!;
  const name = /^column [A-Z]+$/.test(heading) ? heading : `${columnLetters(block.column + index)}: ${heading}`;
  return {
    asked: 'role',
    heading: names[index]!,
    column: name,
    sentence: `No column says how many. Is ${name} the quantity?`,
    choices: [
      { value: 'quantity', label: yes },
      { value: 'none', label: no },
    ],
    refusal: `no column says how many: say whether ${name} is the quantity`,
  };
}
