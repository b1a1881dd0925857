import type { Row, TableSchema } from '../tableSchema';

/** Table `Rates`: what labour and losses cost, by name. */
export const ratesTable = {
  sheet: 'Rates',
  fields: {
    rate: { heading: 'Rate', kind: 'name', required: true },
    value: { heading: 'Value', kind: 'number', required: true, sign: 'notNegative' },
    note: { heading: 'Note', kind: 'text' },
  },
} as const satisfies TableSchema;

export type Rate = Row<typeof ratesTable>;
