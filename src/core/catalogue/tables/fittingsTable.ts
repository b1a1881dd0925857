import type { Row, TableSchema } from '../tableSchema';

/** Table `Fittings`: one row a fitting or a ferrule. */
export const fittingsTable = {
  sheet: 'Fittings',
  fields: {
    fitting: { heading: 'Fitting', kind: 'name', required: true },
    family: { heading: 'Family', kind: 'text', required: true },
    endForm: { heading: 'End form', kind: 'text', required: true },
    thread: { heading: 'Thread', kind: 'text' },
    series: { heading: 'Series', kind: 'text' },
    angle: { heading: 'Angle', kind: 'angle' },
    size: { heading: 'Size', kind: 'text' },
    bore: { heading: 'Bore', kind: 'length', required: true, sign: 'positive' },
    cutOff: { heading: 'Cut-off', kind: 'length', required: true, mayBeDate: true },
    measuredTo: { heading: 'Measured to', kind: 'text' },
    drop: { heading: 'Drop', kind: 'length' },
    insertionDepth: { heading: 'Insertion depth', kind: 'length', sign: 'notNegative' },
    workingPressure: { heading: 'Working pressure', kind: 'pressure', sign: 'positive' },
    mass: { heading: 'Mass', kind: 'mass', sign: 'notNegative' },
    price: { heading: 'Price', kind: 'number', sign: 'notNegative' },
    packQuantity: { heading: 'Pack quantity', kind: 'number', sign: 'notNegative' },
  },
} as const satisfies TableSchema;

export type Fitting = Row<typeof fittingsTable>;
