import { quotedText } from '../../core/quotedText';
import type { Catalogue } from '../../core/catalogue/catalogue';
import { partKey } from '../../core/catalogue/partName';
import { TradeError } from '../../core/tradeError';
import { addressOf } from '../../workbook/a1';
import { hostBlocks } from '../../workbook/hostTable';
import type { Workbook } from '../../workbook/workbook';
import { workbookCatalogue, type WorkbookCatalogue } from '../catalogue/workbookCatalogue';
import { findTables } from '../table/findTables';
import type { RowProblem } from '../table/rowProblem';
import { SheetCells } from '../table/sheetCells';
import { tableAnswers, type TableAnswers } from '../table/tableAnswers';
import type { TableQuestion } from '../table/tableQuestion';
import { tableRows, type LeftOutRow, type ReadReport, type Takeable } from '../table/tableRows';
import { emptyRackTables } from './emptyRack';
import { madeDay } from './hoseAge';
import { RackBookings } from './rackBookings';
import { RackStatus } from './rackStatus';
import { RepeatedRows } from './repeatedRows';
import type { StockRow } from './rackRow';
import { newestRack } from './newestRack';
import { rackLikeness, rackTable, type RackTable } from './rackTable';

/** The stock of a sheet, and what was left out of it. */
export interface Rack {
  readonly rows: readonly StockRow[];
  /** Rows that cannot be used, with why. */
  readonly problems: readonly RowProblem[];
  readonly report: ReadReport;
  readonly questions: readonly TableQuestion[];
  readonly tables: readonly RackTable[];
}

const waysOf = (catalogue: Catalogue | undefined) => ({
  isHose: catalogue && ((name: string) => catalogue.index.hoses.has(partKey(name))),
  unit: catalogue?.units.length,
});

/** Sheets that hold a rack: the one that the newest cut list left first, then the likeliest. */
export async function rackSheets(workbook: Workbook): Promise<readonly string[]> {
  const [names, catalogue] = await Promise.all([workbook.sheets(), workbookCatalogue(workbook).then(found => found?.catalogue)]);
  const ways = waysOf(catalogue);
  const found = await Promise.all(
    names.map(async name => {
      const used = await workbook.used(name);
      if (!used) return { name, likeness: 0 };
      const cells = new SheetCells(used);
      const answers = await tableAnswers(workbook, 'rack', name);
      const tables = findTables(cells, hostBlocks(await workbook.tables(name)), answers.role);
      const racks = tables.flatMap(table => rackTable(cells, table, { answers, ...ways }) ?? []);
      return { name, likeness: Math.max(0, ...racks.map(rackLikeness)) };
    }),
  );
  const newest = await newestRack(workbook);
  const rank = ({ name, likeness }: (typeof found)[number]) => (name === newest ? Infinity : likeness);
  return (
    found
      // Used up, it has headings only; the older racks still have the hose that is gone.
      .filter(({ name, likeness }) => likeness > 0 || name === newest)
      .sort((a, b) => (rank(a) === rank(b) ? 0 : rank(b) - rank(a)))
      .map(({ name }) => name)
  );
}

/** @throws TradeError naming what is wrong */
function stockRow({ reader }: RackTable, row: number, bookings: RackBookings): StockRow {
  const hose = reader.needed(row, 'hose', 'hose');
  const stated = reader.measure(row, 'length');
  if (!stated) throw new TradeError('blank', 'length', 'is blank', 'fill it in');
  const length = bookings.left(row, stated);
  const open = reader.questions.find(({ refusal }) => refusal !== undefined);
  if (open) throw new TradeError('choice', 'no column', 'says how many', `say whether ${open.column} is the quantity`);
  const quantity = reader.has('quantity') ? reader.count(row, 'quantity', 'quantity') : 1;
  if (quantity === undefined) throw new TradeError('blank', 'quantity', 'is blank', 'fill it in');
  const cell = reader.has('made') ? reader.cells.shown(row, reader.columns.made!) : '';
  const made = madeDay(cell);
  if (cell !== '' && made === '') {
    const received = typeof cell === 'object' ? cell.error : quotedText(String(cell));
    const advice = 'enter a date, like 2026-03-01, a year, or a quarter, like 1Q26';
    throw new TradeError('date', 'date of making', `is ${received}`, advice);
  }
  const name = (role: 'place' | 'reel' | 'lot') => reader.name(row, role);
  return { row: row + 1, hose, length, quantity, place: name('place'), reel: name('reel'), lot: name('lot'), made };
}

interface Read {
  readonly rows: readonly StockRow[];
  readonly leftOut: readonly LeftOutRow[];
  readonly questions: readonly TableQuestion[];
}

type RackWaysRead = ReturnType<typeof waysOf> & { readonly answers: TableAnswers };

function readTable(cells: SheetCells, rack: RackTable, take: ReadonlySet<Takeable>, ways: RackWaysRead): Read {
  const rows: StockRow[] = [];
  const leftOut: LeftOutRow[] = [];
  const { hose, length, quantity } = rack.columns;
  const keys = [hose, length, quantity].filter(column => column !== undefined);
  const rules = { name: hose, keys, takesHidden: take.has('hidden'), isKnown: ways.isHose };
  const all = tableRows(cells, rack.table, rules);
  const lines = all.filter(({ kind }) => kind === 'line' || kind === 'below' || kind === 'hidden').map(({ row }) => row);
  const status = new RackStatus(rack.reader, lines, ways.answers.meaning);
  const bookings = new RackBookings(rack.reader, lines, ways.answers.meaning);
  const repeated = new RepeatedRows(rack.reader, lines, ways.answers.meaning);
  for (const { row, kind } of all) {
    if (kind !== 'line' && !(kind === 'below' && take.has('below'))) {
      leftOut.push({ row: row + 1, reason: kind });
      continue;
    }
    try {
      const barred = status.against(row);
      const replaced = bookings.against(row) ?? repeated.against(row);
      if (replaced) {
        leftOut.push({ row: row + 1, reason: 'replaced', sentence: replaced });
        continue;
      }
      const one = { ...stockRow(rack, row, bookings), barred };
      if (one.quantity <= 0 || one.length.value.isZero()) leftOut.push({ row: row + 1, reason: 'none wanted' });
      else if (barred && !take.has('barred')) leftOut.push({ row: row + 1, reason: 'barred', sentence: barred });
      else rows.push(one);
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      leftOut.push({ row: row + 1, reason: 'problem', sentence: error.message });
    }
  }
  return { rows, leftOut, questions: [...status.questions, ...bookings.questions, ...repeated.questions] };
}

/**
 * Reads the rack: all tables of stock of a sheet, each with its own columns.
 * @param take rows that are taken though they would be left out
 * @param read the catalogue, where it was read already
 * @returns undefined where the sheet has no such table
 */
export async function readRack(
  workbook: Workbook,
  sheet: string,
  take: ReadonlySet<Takeable> = new Set(),
  read?: Pick<WorkbookCatalogue, 'catalogue'>,
): Promise<Rack | undefined> {
  const used = await workbook.used(sheet);
  if (!used) return undefined;
  const [hostTables, layout, catalogue, answers] = await Promise.all([
    workbook.tables(sheet),
    workbook.layout(sheet),
    read ? read.catalogue : workbookCatalogue(workbook).then(found => found?.catalogue),
    tableAnswers(workbook, 'rack', sheet),
  ]);
  const cells = new SheetCells(used, layout);
  const ways = waysOf(catalogue);
  const found = findTables(cells, hostBlocks(hostTables), answers.role);
  const filled = found.flatMap(table => rackTable(cells, table, { answers, ...ways }) ?? []);
  const isUsedUp = filled.length === 0 && sheet === (await newestRack(workbook));
  const tables = isUsedUp ? emptyRackTables(cells, { answers, ...ways }) : filled;
  if (tables.length === 0) return undefined;
  const tablesRead = tables.map(table => readTable(cells, table, take, { ...ways, answers }));
  const rows = tablesRead.flatMap(each => each.rows);
  const leftOut = tablesRead.flatMap(each => each.leftOut);
  return {
    rows,
    problems: leftOut.flatMap(({ row, reason, sentence }) => (reason === 'problem' && sentence ? [{ row, sentence }] : [])),
    report: {
      sheet,
      tables: tables.map(({ table }) => addressOf(table.block)),
      taken: rows.map(({ row }) => row),
      leftOut,
    },
    questions: [...tables.flatMap(({ reader }) => reader.questions), ...tablesRead.flatMap(each => each.questions)],
    tables,
  };
}
