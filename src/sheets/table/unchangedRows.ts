import type { CellValue } from '../../workbook/workbook';
import { isDitto } from './ditto';
import type { SheetCells } from './sheetCells';

/** A row as it was when something was worked out from it. */
interface KnownRow<T> {
  readonly values: readonly CellValue[];
  readonly formulas: readonly string[];
  readonly formats: readonly string[];
  readonly results: Map<string, T>;
}

interface KnownSheet<T> {
  readonly facts: string;
  readonly beside: object | undefined;
  readonly rows: Map<number, KnownRow<T>>;
}

/** Sheets whose rows are kept, of each kind of record. */
const KEPT = 4;

const same = (a: CellValue, b: CellValue): boolean =>
  a === b || (typeof a === 'object' && typeof b === 'object' && a.error === b.error && a.sentence === b.sentence);

function isSame<T extends CellValue>(a: readonly T[], b: readonly T[]): boolean {
  if (a.length !== b.length) return false;
  for (let index = 0; index < a.length; index += 1) if (!same(a[index]!, b[index]!)) return false;
  return true;
}

/** Answers for a row from memory, or, where anything of it changed, by `work`. */
export type RowByRow<T> = (row: number, key: string, work: () => T) => T;

/**
 * Remembers what was worked out from the rows of long sheets, which are read again at each step: where a row's values, formulas and formats
 * are still the same, and `facts` and `beside` too, its answer is. Rows that take something from others, by ditto marks or merged cells, are
 * always worked out.
 */
export function unchangedRows<T>(): (cells: SheetCells, facts: string, beside?: object) => RowByRow<T> {
  const sheets = new Map<string, KnownSheet<T>>();
  return (cells, facts, beside) => {
    const { used, layout, sheet: name } = cells;
    const whole = `${used.column} ${used.values[0]?.length ?? 0} ${facts}`;
    let sheet = sheets.get(name);
    if (sheet?.facts !== whole || sheet.beside !== beside) sheet = { facts: whole, beside, rows: new Map() };
    sheets.delete(name);
    sheets.set(name, sheet);
    if (sheets.size > KEPT) sheets.delete([...sheets.keys()][0]!);
    const { rows } = sheet;
    return (row, key, work) => {
      const at = row - used.row;
      const [values, formulas, formats] = [used.values[at], used.formulas[at], used.formats[at]];
      if (layout.merges.length > 0 || !values || !formulas || !formats || values.some(isDitto)) return work();
      let known = rows.get(row);
      const isKnown = known && isSame(known.values, values) && isSame(known.formulas, formulas) && isSame(known.formats, formats);
      if (!known || !isKnown) rows.set(row, (known = { values, formulas, formats, results: new Map() }));
      let result = known.results.get(key);
      if (result === undefined) known.results.set(key, (result = work()));
      return result;
    };
  };
}
