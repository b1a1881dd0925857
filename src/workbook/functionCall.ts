/** One argument of a call as it is written in the formula. */
export type WrittenArgument =
  | { readonly kind: 'omitted'; readonly text: string }
  | {
      readonly kind: 'constant';
      readonly text: string;
      readonly cells: readonly (readonly (string | number | boolean | null)[])[];
    }
  | { readonly kind: 'reference'; readonly text: string; readonly sheet: string | undefined; readonly address: string }
  | { readonly kind: 'name'; readonly text: string }
  | { readonly kind: 'expression'; readonly text: string };

/** The call of a worksheet function of ours in a formula. */
export interface FunctionCall {
  /** Id without namespace: `CUTLENGTH`. */
  readonly id: string;
  readonly arguments: readonly WrittenArgument[];
  /** True where the call is the whole formula, so that the cell shows its result as it is. */
  readonly isWhole: boolean;
  /** Where the call stands in the formula: from its first sign to behind its bracket. */
  readonly from: number;
  readonly to: number;
}

const START = /(?:_xldudf_HOSE_|HOSE\.)([A-Z0-9]+)\s*\(/i;
const REFERENCE =
  /^(?:('(?:[^']|'')+'|[^'!(){}"]+)!)?(\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?|\$?[A-Z]{1,3}:\$?[A-Z]{1,3})$/i;

/** Pieces between the separators that stand outside quotes, brackets and braces; undefined where a bracket is not closed. */
function pieces(text: string, separator: string): { readonly parts: string[]; readonly length: number } | undefined {
  const parts: string[] = [];
  let depth = 0;
  let quote = '';
  let start = 0;
  for (let index = 0; index < text.length; index++) {
    const char = text[index]!;
    if (quote) {
      if (char === quote) quote = '';
    } else if (char === '"' || char === "'") quote = char;
    else if (char === '(' || char === '{') depth += 1;
    else if (char === '}') depth -= 1;
    else if (char === ')') {
      if (depth === 0) return { parts: [...parts, text.slice(start, index)], length: index + 1 };
      depth -= 1;
    } else if (char === separator && depth === 0) {
      parts.push(text.slice(start, index));
      start = index + 1;
    }
  }
  return undefined;
}

function constant(text: string): string | number | boolean | undefined {
  if (/^"(?:[^"]|"")*"$/.test(text)) return text.slice(1, -1).replace(/""/g, '"');
  if (/^(?:true|false)$/i.test(text)) return text.toLowerCase() === 'true';
  return text !== '' && Number.isFinite(Number(text.replace(/%$/, '')))
    ? Number(text.replace(/%$/, '')) / (text.endsWith('%') ? 100 : 1)
    : undefined;
}

function table(text: string): (string | number | boolean | null)[][] | undefined {
  const rows = pieces(`${text.slice(1, -1)})`, ';')?.parts.map(row =>
    pieces(`${row})`, ',')?.parts.map(cell => constant(cell.trim())),
  );
  if (!rows || rows.some(row => !row || row.some(cell => cell === undefined))) return undefined;
  return rows as (string | number | boolean)[][];
}

function argumentOf(written: string): WrittenArgument {
  const text = written.trim();
  if (text === '') return { kind: 'omitted', text };
  const value = constant(text);
  if (value !== undefined) return { kind: 'constant', text, cells: [[value]] };
  const cells = text.startsWith('{') && text.endsWith('}') ? table(text) : undefined;
  if (cells) return { kind: 'constant', text, cells };
  const [, sheet, address] = REFERENCE.exec(text) ?? [];
  if (address)
    return {
      kind: 'reference',
      text,
      sheet: sheet?.replace(/^'|'$/g, '').replace(/''/g, "'"),
      address: address.replace(/\$/g, ''),
    };
  return /^[\p{L}_][\p{L}\p{N}_.]*$/u.test(text) ? { kind: 'name', text } : { kind: 'expression', text };
}

/**
 * The first call of a function of ours in a formula.
 * @param formula as the host gives it (English separators), e.g. `=HOSE.CUTLENGTH(B2,C2,D2)`
 * @returns the call, or undefined where the formula has none
 */
export function functionCall(formula: string): FunctionCall | undefined {
  return callFrom(formula, 0);
}

/** True where a formula calls a function of ours. */
export const callsOurs = (formula: string): boolean => START.test(formula);

/** All calls of functions of ours, in order; a call within the arguments of another is not among them. */
export function functionCalls(formula: string): readonly FunctionCall[] {
  const calls: FunctionCall[] = [];
  for (let call = callFrom(formula, 0); call; call = callFrom(formula, call.to)) calls.push(call);
  return calls;
}

function callFrom(formula: string, at: number): FunctionCall | undefined {
  const pattern = new RegExp(START, 'gi');
  pattern.lastIndex = at;
  const start = pattern.exec(formula);
  if (!start) return undefined;
  const inside = formula.slice(start.index + start[0].length);
  const found = pieces(inside, ',');
  if (!found) return undefined;
  const before = formula.slice(0, start.index).replace(/^=\s*@?\s*/, '');
  const written = found.parts.length === 1 && found.parts[0]!.trim() === '' ? [] : found.parts;
  return {
    id: start[1]!.toUpperCase(),
    arguments: written.map(argumentOf),
    isWhole: before === '' && inside.slice(found.length).trim() === '',
    from: start.index,
    to: start.index + start[0].length + found.length,
  };
}
