import { sheetInFormula } from './a1';
import type { RangeAddress } from './workbook';

/** A table as a CATALOGUE formula names it. */
export type TableReference =
  | { readonly kind: 'range'; readonly sheet: string; readonly address: string }
  | { readonly kind: 'name'; readonly name: string }
  | { readonly kind: 'table'; readonly name: string; readonly part: 'all' | 'data' };

const CALL = /HOSE[._]CATALOGUE\s*\(/i;
const SHEET = /^(?:'((?:[^']|'')+)'|([^'!()[\]"]+))!(.+)$/;
const ADDRESS = /^\$?(?:[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?|[A-Z]{1,3}:\$?[A-Z]{1,3}|\d+:\$?\d+)$/i;
const TABLE = /^([^\s'"![\]()]+)\[\s*#?([A-Za-z]*)\s*\]$/;
const NAME = /^[\p{L}_\\][\p{L}\d_.\\]*$/u;

/** True where a formula calls CATALOGUE. */
export function callsCatalogue(formula: unknown): formula is string {
  return typeof formula === 'string' && formula.startsWith('=') && CALL.test(formula);
}

/** The first CATALOGUE call in a formula: its arguments as text, and the place of what stands between its brackets. */
interface Call {
  readonly texts: readonly string[];
  readonly from: number;
  readonly to: number;
}

/** The first CATALOGUE call; undefined where it does not end. */
function firstCall(formula: string): Call | undefined {
  const call = CALL.exec(formula);
  if (!call) return undefined;
  const texts: string[] = [];
  let depth = 0;
  let quote = '';
  const from = call.index + call[0].length;
  let start = from;
  for (let index = start; index < formula.length; index++) {
    const sign = formula[index]!;
    if (quote !== '') {
      if (sign === quote) quote = '';
    } else if (sign === "'" || sign === '"') quote = sign;
    else if (sign === '(' || sign === '[' || sign === '{') depth++;
    else if (depth > 0 && (sign === ')' || sign === ']' || sign === '}')) depth--;
    else if (depth === 0 && (sign === ',' || sign === ')')) {
      texts.push(formula.slice(start, index).trim());
      start = index + 1;
      if (sign === ')') return { texts, from, to: index };
    }
  }
  return undefined;
}

function reference(text: string, ownSheet: string): TableReference | undefined {
  const [, quoted, plain, rest] = SHEET.exec(text) ?? [];
  const sheet = quoted?.replace(/''/g, "'") ?? plain ?? ownSheet;
  const place = rest ?? text;
  if (ADDRESS.test(place)) return { kind: 'range', sheet, address: place.replace(/\$/g, '').toUpperCase() };
  const [, table, part] = TABLE.exec(text) ?? [];
  if (table !== undefined && /^(all|data)$/i.test(part!)) {
    return { kind: 'table', name: table, part: part!.toLowerCase() as 'all' | 'data' };
  }
  return NAME.test(place) ? { kind: 'name', name: place } : undefined;
}

/**
 * The tables that a CATALOGUE formula names.
 * @param formula as the host writes it in English: `=HOSE.CATALOGUE(Hoses!A1:S60, Fittings!A1:Q120, Crimps!A1:N400)`
 * @param ownSheet sheet of the formula's own cell, for references without one
 * @returns one entry an argument, null where it is left out; undefined where the formula cannot be followed (calculated arguments)
 */
export function catalogueReferences(formula: string, ownSheet: string): (TableReference | null)[] | undefined {
  const call = firstCall(formula);
  if (!call) return undefined;
  const references: (TableReference | null)[] = [];
  for (const text of call.texts) {
    const found = text === '' ? null : reference(text, ownSheet);
    if (found === undefined) return undefined;
    references.push(found);
  }
  return references;
}

const textOfPlace = (place: RangeAddress | undefined) => (place ? `${sheetInFormula(place.sheet)}!${place.address}` : '');

function withArguments(before: string, change: (texts: readonly string[]) => string[]): string {
  const call = firstCall(before);
  if (!call) throw new Error('The CATALOGUE formula cannot be followed.');
  const texts = change(call.texts);
  while (texts.at(-1) === '') texts.pop();
  // Saved files hold the function under the name of their storage.
  const head = before.slice(0, call.from).replace(/(?:_xldudf_)?HOSE[._]CATALOGUE(\s*\()$/i, 'HOSE.CATALOGUE$1');
  return head + texts.join(',') + before.slice(call.to);
}

/**
 * A CATALOGUE formula with other arguments; what stands around the call stays.
 * @param places one a table, in the order of CATALOGUE's arguments; undefined = left out
 * @param before the formula that stands; a plain call is made where there is none
 * @example withTables([{ sheet: 'Hoses', address: 'A1:S60' }]) // =HOSE.CATALOGUE(Hoses!A1:S60)
 */
export function withTables(places: readonly (RangeAddress | undefined)[], before = '=HOSE.CATALOGUE()'): string {
  return withArguments(before, () => places.map(textOfPlace));
}

/**
 * A CATALOGUE formula with one argument replaced; the others stay as they are written.
 * @param index place among CATALOGUE's arguments, from 0
 */
export function withTableAt(before: string, index: number, place: RangeAddress): string {
  return withArguments(before, texts => {
    const length = Math.max(texts.length, index + 1);
    return Array.from({ length }, (_, at) => (at === index ? textOfPlace(place) : (texts[at] ?? '')));
  });
}
