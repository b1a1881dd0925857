import { nameOfCell } from '../../cells/sheetCell';
import { cellAddress } from '../../workbook/a1';
import { correctionKey, type HeadingCorrections } from '../table/headingCorrections';
import type { TableQuestion } from '../table/tableQuestion';
import type { TableRow } from '../table/tableRows';
import type { JobTable } from './jobTable';
import { rowsText } from '../table/rowsText';

/** Rows without a hose below a row that holds nothing but one name. */
interface HoseGroup {
  readonly name: string;
  /** Zero-based. */
  readonly row: number;
  readonly rows: readonly number[];
  /** Cell of the name, where nothing else stands in it. */
  readonly place: string | undefined;
}

/** What the heading of its group says of a row. */
export interface GroupOfRow {
  /** The hose, once somebody said that the heading names it. */
  readonly hose?: string;
  readonly place?: string | undefined;
  /** Why the row cannot be made until that is said. */
  readonly refusal?: string;
}

/** The groups of a table. */
export interface HoseGroups {
  readonly question: TableQuestion | undefined;
  /** Zero-based rows that are headings of groups. */
  readonly headings: ReadonlySet<number>;
  readonly ofRow: ReadonlyMap<number, GroupOfRow>;
}

/** A size of hose among the words: `DN 12`, `3/8`, `-12`. */
const SIZE = /\b(?:dn|nb|id|size)[ -]?\d|\d\/\d|(?:^| )-\d{1,2}\b/i;
const LONGEST = 60;

/** The name that stands alone in a row and may be a hose; undefined where none does. */
function nameAlone({ table, columns, reader }: JobTable, row: number, isHose: ((name: string) => boolean) | undefined) {
  const { block } = table;
  const all = Array.from({ length: block.columns }, (_, index) => block.column + index);
  const filled = all.filter(column => !reader.cells.isEmpty(row, column));
  const [column] = filled;
  const cell = column === undefined ? '' : reader.cells.value(row, column);
  if (filled.length !== 1 || typeof cell !== 'string' || cell.length > LONGEST) return undefined;
  const text = nameOfCell(cell);
  const name = text.replace(/^hose(?: type)?\s*[:–-]?\s+/i, '').replace(/\s*:$/, '');
  if (!/\p{L}/u.test(name)) return undefined;
  const isLikely = column === columns.hose || (isHose ? isHose(name) : SIZE.test(name));
  const place = name === text ? cellAddress({ row, column: column! }) : undefined;
  return isLikely ? { name, place } : undefined;
}

function groupsOf(source: JobTable, rows: readonly TableRow[], isHose: ((name: string) => boolean) | undefined): HoseGroup[] {
  const { reader } = source;
  const groups: { name: string; row: number; rows: number[]; place: string | undefined }[] = [];
  let isOpen = false;
  for (const { row, kind } of rows) {
    const alone = kind === 'total' ? undefined : nameAlone(source, row, isHose);
    if (alone) {
      groups.push({ ...alone, row, rows: [] });
      isOpen = true;
    } else if (kind === 'total') isOpen = false;
    else if (kind !== 'remark') {
      // A row with a hose of its own ends the group: a blank below it may as well mean that one.
      const cell = reader.cells.shown(row, reader.columns.hose!);
      if (typeof cell === 'object' || nameOfCell(cell) !== '') isOpen = false;
      else if (isOpen) groups.at(-1)!.rows.push(row);
    }
  }
  return groups.filter(group => group.rows.length > 0);
}

/** A run of rows as `rows 5–9`. */
function runText(rows: readonly number[]): string {
  const [first, last] = [rows[0]! + 1, rows.at(-1)! + 1];
  const isRun = rows.length > 1 && last - first + 1 === rows.length;
  return isRun ? `rows ${first}–${last}` : rowsText(rows.map(row => row + 1));
}

const keyOf = (groups: readonly HoseGroup[]) =>
  `hose of the rows below ${[...new Set(groups.map(({ name }) => name))].join('; ')}`;

function questionOf(groups: readonly HoseGroup[]): TableQuestion {
  const [first, ...others] = groups;
  const rows = runText(first!.rows);
  const have = first!.rows.length === 1 ? 'has' : 'have';
  const more = others.map(({ name, row, rows: own }) => `${runText(own)} below row ${row + 1}, “${name}”`);
  return {
    asked: 'meaning',
    heading: keyOf(groups),
    column: `row ${first!.row + 1}`,
    sentence: `${rows[0]!.toUpperCase()}${rows.slice(1)} ${have} no hose; row ${first!.row + 1} holds only “${first!.name}”. Are they all of that hose?${
      more.length > 0 ? ` The same goes for ${more.join('; ')}.` : ''
    }`,
    choices: [
      { value: 'yes', label: more.length > 0 ? 'Yes, each below its hose' : `Yes, all ${first!.name}` },
      { value: 'no', label: 'No, leave them out' },
    ],
  };
}

const NONE: HoseGroups = { question: undefined, headings: new Set(), ofRow: new Map() };

/**
 * Job lists in groups: the hose stands alone in a row, and the rows below it leave theirs blank. Whether they are of that hose is asked once
 * for the table.
 * @param said what was answered about this sheet
 */
export function hoseGroups(
  source: JobTable,
  rows: readonly TableRow[],
  said: HeadingCorrections,
  isHose?: (name: string) => boolean,
): HoseGroups {
  const groups = groupsOf(source, rows, isHose);
  if (groups.length === 0) return NONE;
  const answer = said.get(correctionKey(keyOf(groups)));
  if (answer === 'no') return NONE;
  const ofRow = new Map(
    groups.flatMap(({ name, row, rows: own, place }) =>
      own.map((each): [number, GroupOfRow] => [
        each,
        answer === 'yes'
          ? { hose: name, place }
          : { refusal: `hose is blank, and row ${row + 1} holds only “${name}”: say whether it is of that hose` },
      ]),
    ),
  );
  return {
    question: answer === undefined ? questionOf(groups) : undefined,
    headings: new Set(groups.map(({ row }) => row)),
    ofRow,
  };
}
