import { fixedReference } from '../../workbook/a1';
import type { CopySource } from './copySource';

const TOKEN = /"(?:[^"]|"")*"|'(?:[^']|'')*'!?|[\p{L}_\\][\p{L}\p{N}_.\\]*(?![\p{L}\p{N}_.\\]*\s*[(![])/gu;

/** A formula with the names of ranges replaced by their addresses: a copy has no names. */
export function withoutNames(formula: string, { definedNames }: Pick<CopySource, 'definedNames'>): string {
  if (definedNames.length === 0) return formula;
  const byName = new Map(definedNames.map(({ name, at }) => [name.toLowerCase(), at]));
  return formula.replace(TOKEN, (token, offset: number) => {
    const at = byName.get(token.toLowerCase());
    return at && !/[.!]$/.test(formula.slice(0, offset)) ? fixedReference(at) : token;
  });
}
