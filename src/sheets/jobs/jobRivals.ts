import { nameOfCell } from '../../cells/sheetCell';
import { columnLetters } from '../../workbook/a1';
import { HEADING_WORDS } from '../table/headingWords';
import type { KnownParts } from '../table/nameColumns';
import { headingNames, rivalColumns } from '../table/tableColumns';
import { correctionKey, type HeadingCorrections } from '../table/headingCorrections';
import type { TableReader } from '../table/tableReader';
import type { TableQuestion } from '../table/tableQuestion';
import type { JobRole } from './jobRoles';

/** What decides what is made: a wrong column among them means a wrong hose. */
const DECISIVE = ['hose', 'fittingA', 'fittingB', 'overall', 'cutLength', 'quantity'] as const;
type Decisive = (typeof DECISIVE)[number];

const filledRows = ({ table }: TableReader<JobRole>) =>
  Array.from({ length: table.block.rows - 1 }, (_, i) => table.block.row + 1 + i);

/** Whether two columns say the same wherever both are filled. */
function agree(reader: TableReader<JobRole>, one: number, other: number): boolean {
  const { cells } = reader;
  return filledRows(reader).every(row => {
    const [a, b] = [nameOfCell(cells.shown(row, one)), nameOfCell(cells.shown(row, other))];
    return a === '' || b === '' || a === b;
  });
}

const isNaming = (reader: TableReader<JobRole>, column: number, isKnown: (name: string) => boolean) =>
  filledRows(reader).some(row => isKnown(nameOfCell(reader.cells.shown(row, column))));

function question(reader: TableReader<JobRole>, role: Decisive, column: number, rival: number): TableQuestion {
  const { headings, block } = reader.table;
  const named = (at: number) => `${columnLetters(at)}: ${headings[at - block.column]}`;
  const [one, other] = [named(column), named(rival)];
  const label = HEADING_WORDS[role].label.toLowerCase().replace(/ [ab]$/, end => end.toUpperCase());
  const isLength = role === 'overall' && !reader.has('cutLength');
  return {
    asked: 'role',
    heading: headingNames(headings)[rival - block.column]!,
    column: other,
    sentence: `${one} and ${other} can both be the ${label}. Which counts?`,
    choices: [
      { value: 'none', label: one },
      { value: role, label: other },
      ...(isLength ? [{ value: 'cutLength', label: `${other} is the length to cut` }] : []),
    ],
    refusal: `${one} and ${other} can both be the ${label}: say which counts`,
  };
}

/** Two columns that can both be what decides how a hose is made, and do not say the same: somebody has to say which counts. */
export function jobRivals(
  reader: TableReader<JobRole>,
  corrections: HeadingCorrections,
  { isHose, isFitting }: KnownParts,
): readonly TableQuestion[] {
  const names = headingNames(reader.table.headings);
  const isSaid = (column: number) => corrections.has(correctionKey(names[column - reader.table.block.column] ?? ''));
  const used = new Set(Object.values(reader.columns).filter(column => column !== undefined));
  return DECISIVE.flatMap(role => {
    const column = reader.columns[role];
    if (column === undefined || isSaid(column)) return [];
    const isKnown = role === 'hose' ? isHose : role.startsWith('fitting') ? isFitting : undefined;
    const isByName = isKnown !== undefined && isNaming(reader, column, isKnown);
    const isRival = (at: number) =>
      !used.has(at) && !isSaid(at) && !(isByName && !isNaming(reader, at, isKnown)) && !agree(reader, column, at);
    const rival = rivalColumns(reader.table, column, role).find(isRival);
    return rival === undefined ? [] : [question(reader, role, column, rival)];
  });
}
