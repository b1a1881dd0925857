import type { Row, TableSchema } from '../tableSchema';

/** Table `Dies`: the diameters each die set can crimp to. */
export const diesTable = {
  sheet: 'Dies',
  fields: {
    die: { heading: 'Die', kind: 'name', required: true },
    smallest: { heading: 'Smallest', kind: 'length', lengths: 'diameter', sign: 'positive' },
    largest: { heading: 'Largest', kind: 'length', lengths: 'diameter', sign: 'positive' },
    length: { heading: 'Length', kind: 'length', sign: 'positive' },
    checked: { heading: 'Checked', kind: 'text' },
  },
} as const satisfies TableSchema;

export type Die = Row<typeof diesTable>;
