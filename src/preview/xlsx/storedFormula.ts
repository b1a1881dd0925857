import { NEW_EXCEL_FUNCTIONS } from '@univerjs/engine-formula';
import { formulaForFile, formulaFromFile } from './formulaNames';
import { operatorsForFile, operatorsFromFile } from './spillOperators';

/** Parts of a formula outside quoted text and quoted sheet names, changed by `change`. */
function outsideQuotes(formula: string, change: (part: string) => string): string {
  return formula
    .split(/("(?:[^"]|"")*"|'(?:[^']|'')*')/)
    .map((part, index) => (index % 2 === 0 ? change(part) : part))
    .join('');
}

const OURS = /(?<![\w.])HOSE\.[A-Z0-9]+\s*\(/i;
const NAME_BEFORE_BRACKET = /(?<![\w.])([A-Z][A-Z0-9.]*)(?=\()/gi;

/** True where a formula calls one of our functions, as it is typed in a cell. */
export function callsOursAsTyped(formula: string): boolean {
  let found = false;
  outsideQuotes(formula, part => {
    found ||= OURS.test(part);
    return part;
  });
  return found;
}

/**
 * A formula as people type it, from the form an .xlsx file stores: `_xldudf_HOSE_X(…)` becomes `HOSE.X(…)`, the prefixes of newer
 * functions go.
 * @param stored formula text of the file, without `=`
 * @returns formula with `=`
 */
export function typedFormula(stored: string): string {
  const formula = operatorsFromFile(formulaFromFile(stored));
  return `=${outsideQuotes(formula, part => part.replace(/_xl(?:fn|ws|pm)\./gi, ''))}`;
}

/**
 * A formula as an .xlsx file stores it.
 * @param typed formula as typed, with or without `=`
 * @returns formula text without `=`
 */
export function storedFormula(typed: string): string {
  const formula = operatorsForFile(formulaForFile(typed.replace(/^=/, '')));
  return outsideQuotes(formula, part =>
    part.replace(NAME_BEFORE_BRACKET, (name: string) => (NEW_EXCEL_FUNCTIONS.has(name.toUpperCase()) ? `_xlfn.${name}` : name)),
  );
}
