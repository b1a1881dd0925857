import { quotedText } from '../quotedText';
import { TradeError } from '../tradeError';
import { splitHeading } from '../units/headingUnit';
import { headingKey } from './partName';
import type { TableSchema } from './tableSchema';

/**
 * The field that a user names by its column heading; case, blanks, hyphens and a unit behind it are ignored.
 * @throws TradeError `choice` where the table has no such field, listing those it has
 */
export function partField<T extends TableSchema>(schema: T, name: string): keyof T['fields'] & string {
  const wanted = headingKey(splitHeading(name).name);
  const found = Object.entries(schema.fields).find(([, field]) => headingKey(field.heading) === wanted);
  if (found) return found[0];
  const headings = Object.values(schema.fields).map(field => field.heading);
  throw new TradeError('choice', 'field', `is ${quotedText(name)}`, `fields of ${schema.sheet} are ${headings.join(', ')}`);
}
