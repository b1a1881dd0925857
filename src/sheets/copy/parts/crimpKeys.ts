import type { Catalogue } from '../../../core/catalogue/catalogue';
import { crimpFor } from '../../../core/catalogue/crimpFor';
import { partKey } from '../../../core/catalogue/partName';
import { TradeError } from '../../../core/tradeError';
import { neutralName, WILDCARDS } from './names';
import type { AddedRow, PartsTable } from './partsTable';

/** A hose with a fitting, as a sheet names them. */
export interface PartsPair {
  readonly hose: string;
  readonly fitting: string;
}

function matchOf(catalogue: Catalogue, { hose, fitting }: PartsPair) {
  try {
    return crimpFor(catalogue, hose, fitting);
  } catch (error) {
    if (error instanceof TradeError) return undefined;
    throw error;
  }
}

/** Rows for the pairs in use that only a pattern has data for: a search for a pair finds no pattern. */
export function patternRows(catalogue: Catalogue, pairs: readonly PartsPair[]): AddedRow[] {
  const known = new Set<string>();
  return pairs.flatMap(pair => {
    const key = `${partKey(pair.hose)}\u001f${partKey(pair.fitting)}`;
    const match = known.has(key) ? undefined : matchOf(catalogue, pair);
    known.add(key);
    if (!match?.isPattern) return [];
    const { ferrule, die, dial, crimpDiameter, tolerance, insertionDepth } = match.crimp;
    const note = `from the row ${match.matched}`;
    return [{ ...pair, ferrule, die, dial, crimpDiameter, tolerance, insertionDepth, note }];
  });
}

/** Keys of the pairs that a row of their own has data for: no pattern, and no part that the catalogue left out. */
function isOwn(catalogue: Catalogue, hose: string, fitting: string): boolean {
  if (fitting.endsWith('*')) return false;
  return matchOf(catalogue, { hose, fitting })?.isPattern === false;
}

/** The column `Key` of Crimps: hose and fitting of every row that counts. */
export function crimpKeys(catalogue: Catalogue, table: PartsTable, separator: string): string {
  const own = table.goodRows.flatMap(({ row, values }) => {
    const [hose, fitting] = [String(values.hose), String(values.fitting)];
    if (!isOwn(catalogue, hose, fitting)) return [];
    const [hoseCell, fittingCell] = [table.ownCell('hose', row), table.ownCell('fitting', row)];
    const isPlain = !WILDCARDS.test(hose + fitting);
    const formula = isPlain && hoseCell && fittingCell && `=TRIM(${hoseCell})&"${separator}"&TRIM(${fittingCell})`;
    const value = neutralName(`${hose}${separator}${fitting}`.normalize('NFC'));
    return [{ row, cell: { value, format: 'General', ...(formula && { formula }) } }];
  });
  const added = table.addedRows.map(({ row, values }) => ({
    row,
    cell: { value: neutralName(`${values.hose}${separator}${values.fitting}`.normalize('NFC')), format: 'General' },
  }));
  return table.helper('Key', [...own, ...added]);
}
