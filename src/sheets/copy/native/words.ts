import type { NativeArgument } from './nativeFunction';
import { NotNative } from '../notNative';

/** The word among those that choose a formula; case and blanks are ignored. */
export function wordOf<T extends string>({ value }: NativeArgument, words: readonly T[]): T {
  const text = String(typeof value === 'object' ? '' : value)
    .trim()
    .replace(/\s+/g, ' ')
    .toLowerCase();
  const found = words.find(word => word.toLowerCase() === text);
  if (!found) throw new NotNative('a word that chooses the rule is not known');
  return found;
}

/** A word that stands in a cell must stay the one the formula was written for. */
export const stays = (argument: NativeArgument | undefined, word: string): string[] =>
  argument && !argument.isConstant ? [`TRIM(${argument.text})<>"${word}"`] : [];
