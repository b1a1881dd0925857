import type { Row, TableSchema } from '../tableSchema';

/** Table `Fluids`: other names of a fluid, and the temperatures a hose may carry it at. */
export const fluidsTable = {
  sheet: 'Fluids',
  fields: {
    fluid: { heading: 'Fluid', kind: 'name', required: true },
    alsoCalled: { heading: 'Also called', kind: 'text' },
    hose: { heading: 'Hose', kind: 'text' },
    coldest: { heading: 'Coldest', kind: 'temperature' },
    hottest: { heading: 'Hottest', kind: 'temperature' },
    note: { heading: 'Note', kind: 'text' },
  },
} as const satisfies TableSchema;

export type FluidRow = Row<typeof fluidsTable>;
