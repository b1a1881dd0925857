import { DetailedCellError, HyperFormula, type RawCellContent } from 'hyperformula';
import type { CopiedCell, CopiedSheet, CopiedWorkbook } from '../../../src/workbook/copiedWorkbook';
import type { CellValue } from '../../../src/workbook/workbook';

/*
 * HyperFormula 3.5.0 (Handsoncode, GPL-3.0), a spreadsheet engine that shares nothing with ours: only the tests use it.
 * `useArrayArithmetic`: SUMPRODUCT over comparisons, as Excel, LibreOffice and Google Sheets have it.
 */
const OPTIONS = { licenseKey: 'gpl-v3', useArrayArithmetic: true, useColumnIndex: false };

const raw = ({ formula, value }: CopiedCell): RawCellContent => {
  if (formula !== undefined) return formula;
  if (typeof value === 'object') return '=NA()';
  if (value === '') return null;
  // What would be read as a formula or number is text in the file.
  return typeof value === 'string' ? `'${value}` : value;
};

const grid = ({ row, column, cells }: CopiedSheet): RawCellContent[][] => [
  ...Array.from({ length: row }, () => []),
  ...cells.map(line => [...Array<null>(column).fill(null), ...line.map(raw)]),
];

/** A copy in another engine, everything calculated. */
export function openElsewhere({ sheets }: CopiedWorkbook) {
  const engine = HyperFormula.buildFromSheets(Object.fromEntries(sheets.map(sheet => [sheet.name, grid(sheet)])), OPTIONS);
  return {
    value(sheet: string, row: number, col: number): CellValue {
      const value = engine.getCellValue({ sheet: engine.getSheetId(sheet)!, row, col });
      if (value instanceof DetailedCellError) return { error: value.value };
      return value ?? '';
    },
    set(sheet: string, row: number, col: number, value: string | number | null): void {
      engine.setCellContents({ sheet: engine.getSheetId(sheet)!, row, col }, value);
    },
    close: () => engine.destroy(),
  };
}

/** A formula of a copy with what the copy says it gives and what the other engine gives. */
export interface Compared {
  readonly at: string;
  readonly formula: string;
  readonly ours: CellValue;
  readonly theirs: CellValue;
}

const CLOSE = 1e-9;

/** Equal numbers to 1e-9, equal texts, an error for an error: the codes differ, and only whether there is a value counts. */
export function isSame(a: CellValue, b: CellValue): boolean {
  if (typeof a === 'object' || typeof b === 'object') return typeof a === 'object' && typeof b === 'object';
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) <= CLOSE * Math.max(1, Math.abs(a));
  return a === b;
}

/** Every formula of a copy, calculated elsewhere. */
export function compareAll(copy: CopiedWorkbook): Compared[] {
  const elsewhere = openElsewhere(copy);
  const compared = copy.sheets.flatMap(({ name, row, column, cells }) =>
    cells.flatMap((line, down) =>
      line.flatMap(({ formula, value }, across) => {
        if (formula === undefined) return [];
        const theirs = elsewhere.value(name, row + down, column + across);
        return [{ at: `${name} R${row + down + 1}C${column + across + 1}`, formula, ours: value, theirs }];
      }),
    ),
  );
  elsewhere.close();
  return compared;
}
