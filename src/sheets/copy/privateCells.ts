import { overlap, type Block } from '../../workbook/a1';
import { commaReadings, numberFromText } from '../../core/units/numberText';
import { callsOurs, functionCalls } from '../../workbook/functionCall';
import { spilledResult } from '../../workbook/spilledResult';
import type { CellValue } from '../../workbook/workbook';
import type { FoundTable } from '../table/findTables';
import { CellSet, type WorkbookCell } from './workbookCell';
import { eachFilledCell, type CopySource } from './copySource';
import type { SourceSheet } from './sourceSheet';
import { saysPrice } from './partsSheets';
import { blockOfReference, referencesIn } from './references';

/** What a customer is not shown, as short labels and headings say it. */
const NO_COST = /\bmargin of pressure\b/i;
const PRIVATE = /\b(?:costs?|margins?|mark-?ups?|profits?|labou?r|purchase price|buy(?:ing)? price)\b/i;
/** What may stand beside an amount in its cell: a currency, per cent, `/h`. */
const MARKS = /\p{Sc}|%|\b[A-Z]{3}\b|\/\s*\p{L}+$/gu;
const LONGEST_LABEL = 40;
/** Cells between a label and its value. */
const LABEL_GAP = 2;
/** Of FINDHOSE and FINDFITTING: what the part costs, counted from 0. */
const FOUND_PRICE = 4;
/** Steps by which cost may travel from cell to cell; a price stops it. */
const MOST_STEPS = 20;

const contains = ({ row, column, rows, columns }: Block, place: WorkbookCell) =>
  place.row >= row && place.row < row + rows && place.column >= column && place.column < column + columns;

/** A number, or a text that reads as one: lists from elsewhere have `58,50`. */
function isAmount(value: CellValue): boolean {
  if (typeof value !== 'string') return typeof value === 'number';
  const bare = value.replace(MARKS, '').trim();
  return value.length <= LONGEST_LABEL && (numberFromText(bare) ?? commaReadings(bare)) !== undefined;
}

/** Finds the cells of a workbook that say what things cost and what is earned on them. */
class PrivateCells {
  readonly found = new CellSet();
  /** Columns of tables that were taken as a whole. */
  private readonly columns = new Set<string>();

  constructor(private readonly source: CopySource) {}

  private sheet(name: string): SourceSheet | undefined {
    return this.source.sheets.get(name);
  }

  private tableOf(place: WorkbookCell): FoundTable | undefined {
    return this.sheet(place.sheet)?.tables.find(({ block }) => contains(block, place));
  }

  /** A cell, and where it stands in a table the table's whole column. */
  private take(place: WorkbookCell): boolean {
    const sheet = this.sheet(place.sheet);
    const table = this.tableOf(place);
    if (table) {
      const column = `${table.block.row} ${place.column} ${place.sheet}`;
      if (this.columns.has(column)) return this.found.add(place);
      this.columns.add(column);
    }
    const [first, last] = table ? [table.block.row, table.block.row + table.block.rows - 1] : [place.row, place.row];
    let isNew = this.found.add(place);
    for (let row = first; row <= last; row += 1) {
      if (!sheet?.cells.isEmpty(row, place.column)) isNew = this.found.add({ ...place, row }) || isNew;
    }
    return isNew;
  }

  /** A heading with its column; a label with the value beside it, or with those below it. */
  private takeLabel(place: WorkbookCell, { cells }: SourceSheet): void {
    const table = this.tableOf(place);
    if (table?.block.row === place.row) return void this.take(place);
    this.found.add(place);
    for (let column = place.column + 1; column <= place.column + 1 + LABEL_GAP; column += 1) {
      if (cells.isEmpty(place.row, column)) continue;
      if (isAmount(cells.value(place.row, column)) || cells.isComputed(place.row, column)) {
        this.found.add({ ...place, column });
        return;
      }
      break;
    }
    if (table) return;
    for (let row = place.row + 1; !cells.isEmpty(row, place.column); row += 1) this.found.add({ ...place, row });
  }

  private takeWords(sheet: SourceSheet): void {
    for (const place of eachFilledCell(sheet)) {
      const value = sheet.cells.value(place.row, place.column);
      if (typeof value !== 'string' || value.length > LONGEST_LABEL || !PRIVATE.test(value) || NO_COST.test(value)) continue;
      if (!sheet.cells.isComputed(place.row, place.column)) this.takeLabel(place, sheet);
    }
  }

  /** Results of UNITCOST; cost and margin of SELLPRICE. */
  private takeCalls(sheet: SourceSheet): void {
    for (const place of eachFilledCell(sheet)) {
      const formula = sheet.cells.formula(place.row, place.column);
      const calls = functionCalls(formula);
      for (const call of calls) {
        if (call.id === 'UNITCOST') {
          const width = spilledResult(formula)?.columns.length ?? 1;
          for (let across = 0; across < width; across += 1) this.take({ ...place, column: place.column + across });
        }
        const [, , field] = call.arguments;
        if (/^(?:HOSE|FITTING)DATA$/.test(call.id) && /price/i.test(field?.text ?? '')) this.take(place);
        if (/^FIND(?:HOSE|FITTING)$/.test(call.id)) this.takeFound(place);
        if (call.id === 'SELLPRICE') call.arguments.slice(0, 2).forEach(({ text }) => this.takeReferences(text, place.sheet));
      }
    }
  }

  /** What the catalogue holds are prices that the workshop pays. */
  private takeFound(place: WorkbookCell): void {
    const block = this.source.spills.get(`${place.row} ${place.column} ${place.sheet}`);
    for (let down = 0; down < (block?.rows ?? 0); down += 1) {
      this.found.add({ ...place, row: place.row + down, column: place.column + FOUND_PRICE });
    }
  }

  /** Prices on sheets of parts data. */
  private takePartsPrices(): void {
    for (const [sheet, { prices }] of this.source.parts) {
      for (const block of prices) for (const place of this.filledIn(sheet, block)) this.take(place);
    }
  }

  private takeReferences(text: string, ownSheet: string): void {
    for (const reference of referencesIn(text)) {
      const sheet = reference.sheet ?? ownSheet;
      for (const place of this.filledIn(sheet, blockOfReference(reference))) this.take(place);
    }
  }

  private *filledIn(name: string, block: Block): Generator<WorkbookCell> {
    const cells = this.sheet(name)?.cells;
    const { row = 0, column = 0 } = cells?.used ?? {};
    const used = cells && { row, column, rows: cells.lastRow - row + 1, columns: cells.lastColumn - column + 1 };
    const part = used && overlap(block, used);
    if (!part) return;
    for (let r = part.row; r < part.row + part.rows; r += 1) {
      for (let c = part.column; c < part.column + part.columns; c += 1) {
        if (!cells.isEmpty(r, c)) yield { sheet: name, row: r, column: c };
      }
    }
  }

  /** True where a formula reads a cell that is left out. */
  private reads(formula: string, ownSheet: string): boolean {
    return referencesIn(formula).some(reference => this.found.meets(reference.sheet ?? ownSheet, blockOfReference(reference)));
  }

  private isPrice(place: WorkbookCell): boolean {
    const table = this.tableOf(place);
    return table !== undefined && saysPrice(table.headings[place.column - table.block.column] ?? '');
  }

  /** What is calculated from a cost is one, too, until a selling price is made of it; our own functions are handled above. */
  private travel(): boolean {
    let isNew = false;
    for (const sheet of this.source.sheets.values()) {
      for (const place of eachFilledCell(sheet)) {
        const formula = sheet.cells.formula(place.row, place.column);
        if (formula === '' || this.found.has(place) || callsOurs(formula) || this.isPrice(place)) continue;
        if (this.reads(formula, place.sheet)) isNew = this.take(place) || isNew;
      }
    }
    return isNew;
  }

  findAll(): this {
    for (const sheet of this.source.sheets.values()) {
      this.takeWords(sheet);
      this.takeCalls(sheet);
    }
    this.takePartsPrices();
    for (let step = 0; step < MOST_STEPS && this.travel(); step += 1);
    return this;
  }
}

/**
 * The cells that say what things cost the workshop and what it earns: labelled so, results of UNITCOST, what SELLPRICE is given, and what
 * is calculated from these. A selling price is none of them.
 */
export function privateCells(source: CopySource): CellSet {
  return new PrivateCells(source).findAll().found;
}
