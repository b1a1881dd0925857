import type { Row, TableSchema } from '../tableSchema';

/** Table `Machines`: a row without hose and fitting describes the machine, the others are its own recorded dial settings. */
export const machinesTable = {
  sheet: 'Machines',
  fields: {
    machine: { heading: 'Machine', kind: 'name', required: true },
    catalogueDials: { heading: 'Catalogue dials', kind: 'yesNo' },
    die: { heading: 'Die', kind: 'text' },
    hose: { heading: 'Hose', kind: 'text' },
    fitting: { heading: 'Fitting', kind: 'text' },
    dial: { heading: 'Dial', kind: 'number' },
    step: { heading: 'Step', kind: 'length', lengths: 'diameter' },
    perTurn: { heading: 'Per turn', kind: 'length', lengths: 'diameter' },
    lowest: { heading: 'Lowest', kind: 'number' },
    highest: { heading: 'Highest', kind: 'number' },
    largestMove: { heading: 'Largest move', kind: 'number', sign: 'notNegative' },
    date: { heading: 'Date', kind: 'date' },
    by: { heading: 'By', kind: 'text' },
    note: { heading: 'Note', kind: 'text' },
  },
} as const satisfies TableSchema;

export type CatalogueMachine = Row<typeof machinesTable>;
