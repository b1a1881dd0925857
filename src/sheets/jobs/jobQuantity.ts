import { columnLetters } from '../../workbook/a1';
import type { HeadingCorrections } from '../table/headingCorrections';
import { headingNames } from '../table/tableColumns';
import { correctionKey } from '../table/headingCorrections';
import { knownHeading } from '../table/headingRow';
import type { TableReader } from '../table/tableReader';
import type { TableQuestion } from '../table/tableQuestion';
import type { JobRole } from './jobRoles';

/** Headings of whole numbers that count nothing. */
const NO_COUNT = /size|dn|dash|week|day|year|page|code|rev|class|\bno\.?$|number|\bid$|tel|phone/i;
/** Nobody makes more of one line. */
const MOST = 1000;

const isCount = (cell: unknown) => typeof cell === 'number' && Number.isInteger(cell) && cell >= 1 && cell <= MOST;

/** A job list without a column of quantities makes one of each line, unless some column that is not read may say how many: that is asked. */
export function quantityQuestion(reader: TableReader<JobRole>, corrections: HeadingCorrections): TableQuestion | undefined {
  if (reader.has('quantity')) return undefined;
  const { headings, block } = reader.table;
  const names = headingNames(headings);
  const used = new Set(Object.values(reader.columns));
  const index = headings.findIndex((heading, at) => {
    const column = block.column + at;
    if (heading === '' || used.has(column) || corrections.has(correctionKey(names[at]!))) return false;
    if (NO_COUNT.test(heading) || knownHeading(heading)) return false;
    const filled = Array.from({ length: block.rows - 1 }, (_, i) => reader.cells.value(block.row + 1 + i, column)).filter(
      cell => cell !== '',
    );
    return filled.length > 0 && filled.every(isCount) && filled.some(cell => cell !== 1);
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
      { value: 'quantity', label: 'Yes, that many of each' },
      { value: 'none', label: 'No, one of each line' },
    ],
    refusal: `no column says how many: say whether ${name} is the quantity`,
  };
}
