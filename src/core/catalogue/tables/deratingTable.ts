import type { Row, TableSchema } from '../tableSchema';

/** Table `Derating`: share of a hose's working pressure that is left at a temperature. */
export const deratingTable = {
  sheet: 'Derating',
  fields: {
    hose: { heading: 'Hose', kind: 'name', required: true },
    temperature: { heading: 'Temperature', kind: 'temperature', required: true },
    factor: { heading: 'Factor', kind: 'fraction', required: true, sign: 'positive' },
    note: { heading: 'Note', kind: 'text' },
  },
} as const satisfies TableSchema;

export type Derating = Row<typeof deratingTable>;
