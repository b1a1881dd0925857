import type { Row, TableSchema } from '../tableSchema';

/** Table `Guards`: sleeves and coils over the hose, by size. */
export const guardsTable = {
  sheet: 'Guards',
  fields: {
    guard: { heading: 'Guard', kind: 'name', required: true },
    size: { heading: 'Size', kind: 'text' },
    insideDiameter: { heading: 'Inside diameter', kind: 'length', sign: 'positive' },
    pricePerLength: { heading: 'Price per length', kind: 'perLength', sign: 'notNegative' },
  },
} as const satisfies TableSchema;

export type Guard = Row<typeof guardsTable>;
