/** A cell, block or name, with its sheet before it. */
const PLACE = String.raw`(?:(?:'(?:[^']|'')*'|[\p{L}_][\p{L}\d_.]*)!)?[$\p{L}_][$\p{L}\d_.]*`;
const TEXT = String.raw`"(?:[^"]|"")*"`;
const SHEET = String.raw`'(?:[^']|'')*'`;
const QUOTED = new RegExp(`${TEXT}|${SHEET}`, 'y');
const SINGLE = '_xlfn.SINGLE(';
const OPERAND = new RegExp(`${PLACE}(?::${PLACE})?`, 'uy');

/** Where a text or a sheet's name in quotes is found instead, it stays. */
function replaced(formula: string, pattern: string, by: (place: string) => string): string {
  return formula.replace(new RegExp(`${TEXT}|${pattern}|${SHEET}`, 'giu'), (found: string, place?: string) =>
    place === undefined ? found : by(place),
  );
}

/** Position behind the bracket that closes the one at `open`; the end where none does. */
function behindBracket(formula: string, open: number): number {
  let depth = 0;
  for (let at = open; at < formula.length; at++) {
    QUOTED.lastIndex = at;
    const quoted = QUOTED.exec(formula)?.[0];
    if (quoted) at += quoted.length - 1;
    else if (formula[at] === '(') depth++;
    else if (formula[at] === ')' && --depth === 0) return at + 1;
  }
  return formula.length;
}

/** Position behind the operand that begins at `start`: a place, a call or a bracket. */
function behindOperand(formula: string, start: number): number {
  OPERAND.lastIndex = start;
  const end = start + (OPERAND.exec(formula)?.[0].length ?? 0);
  return formula[end] === '(' ? behindBracket(formula, end) : end;
}

/** `@…` as the function that a file stores; the sign in `[@Column]` is another one. */
function singlesForFile(formula: string): string {
  const signs = new RegExp(`${TEXT}|${SHEET}|(?<!\\[)@`, 'g');
  for (let found = signs.exec(formula); found; found = signs.exec(formula)) {
    if (found[0] !== '@') continue;
    const end = behindOperand(formula, found.index + 1);
    return `${formula.slice(0, found.index)}${SINGLE}${singlesForFile(formula.slice(found.index + 1, end))})${singlesForFile(formula.slice(end))}`;
  }
  return formula;
}

function singlesFromFile(formula: string): string {
  const calls = new RegExp(`${TEXT}|${SHEET}|_xlfn\\.SINGLE\\(`, 'gi');
  for (let found = calls.exec(formula); found; found = calls.exec(formula)) {
    if (found[0].length !== SINGLE.length || !found[0].endsWith('(')) continue;
    const open = found.index + SINGLE.length - 1;
    const end = behindBracket(formula, open);
    const inside = formula.slice(open + 1, end - 1);
    const whole = behindOperand(inside, 0) === inside.length ? singlesFromFile(inside) : `(${singlesFromFile(inside)})`;
    return `${formula.slice(0, found.index)}@${whole}${singlesFromFile(formula.slice(end))}`;
  }
  return formula;
}

/** Spilled ranges and single values as people type them (`A1#`, `@A1:A5`), from the functions that a file stores for them. */
export function operatorsFromFile(formula: string): string {
  return singlesFromFile(replaced(formula, String.raw`_xlfn\.ANCHORARRAY\((${PLACE})\)`, place => `${place}#`));
}

/** The way back: a file that holds the signs themselves is damaged to Excel. */
export function operatorsForFile(formula: string): string {
  if (!/[#@]/.test(formula)) return formula;
  return singlesForFile(replaced(formula, `(${PLACE})#`, place => `_xlfn.ANCHORARRAY(${place})`));
}
