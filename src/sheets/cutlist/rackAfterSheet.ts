import type { Decimal } from '../../core/units/decimal';
import { convertMeasure, measureUnit } from '../../core/units/measureUnit';
import type { Length, LengthUnit } from '../../core/units/lengthUnit';
import type { Change } from '../../workbook/workbook';
import { HEAD_FILL } from '../print/sheetFills';
import { SheetWriter, type WrittenCell } from '../print/sheetWriter';
import type { Rack } from '../rack/rack';
import type { RackTable } from '../rack/rackTable';
import { lengthText } from '../table/lengthText';
import { LEFT_OUT_WORDS } from '../table/tableRows';
import type { PlannedReel } from './plannedReel';
import { plainValue } from '../../workbook/cellWords';

/** A row of the new sheet. */
interface NewRow {
  readonly cells: readonly WrittenCell[];
  readonly formats: readonly string[];
  readonly note: string;
  readonly isHeading?: boolean;
}

/** Heading of the column that says what the cut list did to a row: the sheet before this one may have one, too. */
const NOTE = 'Note of the cut list';
/** Decimals that a sheet keeps of a converted length. */
const PLACES = 9;
/** What is shown of them. */
const CONVERTED = '0.0##';
const WIDTH = 84;
const NOTE_WIDTH = 220;

class RackCopy {
  private readonly taken = new Map<number, number>();

  constructor(
    private readonly rack: Rack,
    private readonly reels: readonly PlannedReel[],
    private readonly unit: LengthUnit,
  ) {
    for (const { rack: row } of reels) this.taken.set(row.row, (this.taken.get(row.row) ?? 0) + 1);
  }

  private get cells() {
    return this.rack.tables[0]!.reader.cells;
  }

  get columns(): readonly number[] {
    const { used } = this.cells;
    const notes = this.rack.tables.map(({ table: { headings, block } }) => block.column + headings.indexOf(NOTE));
    const isNote = (column: number) =>
      this.rack.tables.every(({ table }, at) => notes[at] === column && table.headings.includes(NOTE));
    return used.values[0]!.map((_, index) => used.column + index).filter(column => !isNote(column));
  }

  /** A row as it stands. `shown`: merged names go into each of its rows, for rows come and go. */
  private asIs(row: number, note = '', shown = false, isHeading = false): NewRow {
    const value = (column: number) => (shown ? this.cells.shown(row, column) : this.cells.value(row, column));
    return {
      cells: this.columns.map(column => plainValue(value(column))),
      formats: this.columns.map(column => this.cells.format(row, column)),
      note,
      isHeading,
    };
  }

  private withCells(table: RackTable, base: NewRow, changes: ReadonlyMap<number, WrittenCell>, note: string): NewRow {
    const cells = this.columns.map((column, index) => changes.get(column) ?? base.cells[index]!);
    const isConverted = table.reader.unitOf('length')?.symbol !== this.unit;
    const formatOf = (column: number) => (isConverted && column === table.columns.length ? CONVERTED : 'General');
    const formats = this.columns.map((column, index) => (changes.has(column) ? formatOf(column) : base.formats[index]!));
    return { cells, formats, note };
  }

  /** A length as the rack gives its lengths: in the unit of the column, else with its unit behind it. */
  private lengthCell({ reader }: RackTable, length: Decimal): WrittenCell {
    const own = reader.unitOf('length');
    if (!own) return `${lengthText(length, this.unit)} ${this.unit}`;
    return convertMeasure(length, measureUnit('length', this.unit)!, own).toDecimalPlaces(PLACES).toNumber();
  }

  /** What is left of a row once its reels were cut: fewer of them, or none. */
  private rest(table: RackTable, row: number): readonly NewRow[] {
    const stock = this.rack.rows.find(each => each.row === row + 1)!;
    const taken = this.taken.get(row + 1) ?? 0;
    const now = this.whatIsLeft(table, stock.length);
    if (taken === 0)
      return [now.size === 0 ? this.asIs(row, '', true) : this.withCells(table, this.asIs(row, '', true), now, '')];
    const left = stock.quantity - taken;
    const { quantity } = table.columns;
    if (left <= 0 || quantity === undefined) return [];
    return [this.withCells(table, this.asIs(row, '', true), new Map([...now, [quantity, left]]), 'others of these were cut')];
  }

  /** Where a column says what was used of each reel, the new sheet says what is left, and nothing more comes off. */
  private whatIsLeft(table: RackTable, { value, unit }: Length): Map<number, WrittenCell> {
    const { length, used } = table.columns;
    if (used === undefined) return new Map();
    const own = convertMeasure(value, unit, measureUnit('length', this.unit)!);
    return new Map<number, WrittenCell>([
      [length!, this.lengthCell(table, own)],
      [used, ''],
    ]);
  }

  /** Ends that go back, with all that the rack says of the reel they are of. */
  private ends(table: RackTable): readonly NewRow[] {
    const { length, quantity, used } = table.columns;
    const { block } = table.table;
    const isOf = (row: number) => row > block.row && row < block.row + block.rows;
    const below = new Set(table.table.below);
    return this.reels.flatMap((reel, index) => {
      const row = reel.rack.row - 1;
      if (!reel.isKept || !(isOf(row) || below.has(row))) return [];
      const cells = new Map<number, WrittenCell>([[length!, this.lengthCell(table, reel.left)]]);
      if (used !== undefined) cells.set(used, '');
      if (quantity !== undefined) cells.set(quantity, 1);
      return [this.withCells(table, this.asIs(row, '', true), cells, `end of reel ${index + 1} of the cut list`)];
    });
  }

  rows(): readonly NewRow[] {
    const { rack, cells } = this;
    const lines = new Set(rack.rows.map(({ row }) => row - 1));
    const left = new Map(rack.report.leftOut.map(each => [each.row - 1, each]));
    const headings = new Set(rack.tables.map(({ table }) => table.block.row));
    const tableOf = (row: number) =>
      rack.tables.find(({ table: { block, below } }) => (row > block.row && row < block.row + block.rows) || below.includes(row));
    const last = new Map(rack.tables.map(table => [table, Math.max(...[...lines].filter(row => tableOf(row) === table), -1)]));
    const all: NewRow[] = [];
    for (let row = cells.used.row; row <= cells.lastRow; row += 1) {
      const table = tableOf(row);
      const why = left.get(row);
      if (lines.has(row) && table) all.push(...this.rest(table, row));
      else if (why?.reason === 'total' || why?.reason === 'replaced') continue;
      // A note beside units, or beside words that stand alone, would make stock of the row when the sheet is read again.
      else if (why && why.reason !== 'remark')
        all.push(this.asIs(row, `left as it is: ${why.sentence ?? LEFT_OUT_WORDS[why.reason]}`));
      else all.push(this.asIs(row, '', false, headings.has(row)));
      if (table && last.get(table) === row) all.push(...this.ends(table));
    }
    return all;
  }
}

/** Blocks of cells of a column with the same format, so that there are few changes. */
function formatsInto(writer: SheetWriter, rows: readonly NewRow[], column: number): void {
  let first = 0;
  rows.forEach((row, index) => {
    const format = row.formats[column]!;
    if (index + 1 < rows.length && rows[index + 1]!.formats[column] === format) return;
    if (format !== '' && format !== 'General') writer.format(first, column, index + 1 - first, 1, format);
    first = index + 1;
  });
}

/**
 * A new sheet with the rack as it is after the cut list, to be the rack of the next plan: its own columns, in its own units, with the rows
 * that could not be read as they stand.
 * @param unit of the plan
 */
export function rackAfterSheet(sheet: string, rack: Rack, reels: readonly PlannedReel[], unit: LengthUnit): readonly Change[] {
  const copy = new RackCopy(rack, reels, unit);
  const rows = copy.rows();
  const { columns } = copy;
  const noteAt = columns.length;
  const writer = new SheetWriter(sheet);
  columns.forEach((_, column) => formatsInto(writer, rows, column));
  writer.values(
    0,
    0,
    rows.map(({ cells, note, isHeading }) => [...cells, isHeading ? NOTE : note]),
  );
  rows.forEach(({ isHeading }, row) => {
    if (isHeading) writer.style(row, 0, 1, noteAt + 1, { bold: true, fill: HEAD_FILL, wrap: true });
  });
  return writer
    .widths(...columns.map(() => WIDTH), NOTE_WIDTH)
    .page({ orientation: 'portrait', fitWidth: true })
    .done();
}
