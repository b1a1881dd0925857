import { blockOf, columnLetters, sheetInFormula, type Block } from '../../workbook/a1';

/** A reference as it stands in a formula. */
export interface FoundReference {
  readonly from: number;
  readonly to: number;
  /** Undefined where the formula's own sheet is meant. */
  readonly sheet: string | undefined;
  /** As written, without sheet: `$B$2:B9`. */
  readonly address: string;
}

const SHEET = String.raw`(?:('(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!)?`;
const CELL = String.raw`\$?[A-Za-z]{1,3}\$?[1-9]\d{0,6}`;
const AREA = String.raw`${CELL}(?::${CELL})?|\$?[A-Za-z]{1,3}:\$?[A-Za-z]{1,3}|\$?[1-9]\d{0,6}:\$?[1-9]\d{0,6}`;
const TOKEN = new RegExp(String.raw`"(?:[^"]|"")*"|(?<![\p{L}\p{N}_.$!'\])])${SHEET}(${AREA})(?![\p{L}\p{N}_.(!])`, 'gu');

/** The references of a formula, texts passed over. */
export function referencesIn(formula: string): FoundReference[] {
  return [...formula.matchAll(TOKEN)].flatMap(({ index, 0: whole, 1: sheet, 2: address }) => {
    if (address === undefined || !blockOf(address.replace(/\$/g, ''))) return [];
    return [{ from: index, to: index + whole.length, sheet: sheet?.replace(/^'|'$/g, '').replace(/''/g, "'"), address }];
  });
}

/** A formula with every reference replaced. */
export function withReferences(formula: string, change: (reference: FoundReference) => string): string {
  let changed = '';
  let at = 0;
  for (const reference of referencesIn(formula)) {
    changed += formula.slice(at, reference.from) + change(reference);
    at = reference.to;
  }
  return changed + formula.slice(at);
}

/** A reference with the name of its sheet. */
export function referenceText(sheet: string | undefined, address: string): string {
  return sheet === undefined ? address : `${sheetInFormula(sheet)}!${address}`;
}

/** The block of a reference as it is written. */
export const blockOfReference = ({ address }: Pick<FoundReference, 'address'>): Block => blockOf(address.replace(/\$/g, ''))!;

/** A block as it stands in formulas of other sheets and rows: `$B$2:$B$9`. */
export function fixedAddress({ row, column, rows, columns }: Block): string {
  const cell = (r: number, c: number) => `$${columnLetters(c)}$${r + 1}`;
  const first = cell(row, column);
  return rows === 1 && columns === 1 ? first : `${first}:${cell(row + rows - 1, column + columns - 1)}`;
}
