import { typedNumber } from '../../cells/typedNumber';

/** What is wrong with a typed field of a record, in words; undefined where it is fine. */
export function recordFieldMistake(field: string, text: string): string | undefined {
  if (text.trim() === '' || (field !== 'uncertainty' && field !== 'factor')) return undefined;
  const { value } = typedNumber(text, field);
  if (field === 'factor') return value?.gte(1) ? undefined : 'A number of at least 1, or nothing';
  return value?.gt(0) ? undefined : 'A number above 0, or nothing';
}
