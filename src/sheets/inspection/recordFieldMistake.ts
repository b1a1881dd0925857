import { typedNumber } from '../../cells/typedNumber';
import { typedProofFactor } from '../table/typedFields';

/** What is wrong with a typed field of a record, in words; undefined where it is fine. */
export function recordFieldMistake(field: string, text: string): string | undefined {
  if (text.trim() === '' || (field !== 'uncertainty' && field !== 'factor')) return undefined;
  if (field === 'factor') return typedProofFactor(text).mistake;
  return typedNumber(text, 'uncertainty U', { sign: 'positive', like: '0.02' }).mistake;
}
