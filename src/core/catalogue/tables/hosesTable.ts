import type { Row, TableSchema } from '../tableSchema';

/** Table `Hoses`: one row a hose. */
export const hosesTable = {
  sheet: 'Hoses',
  fields: {
    hose: { heading: 'Hose', kind: 'name', required: true },
    family: { heading: 'Family', kind: 'text', required: true },
    standard: { heading: 'Standard', kind: 'text' },
    size: { heading: 'Size', kind: 'text' },
    bore: { heading: 'Bore', kind: 'length', required: true, sign: 'positive' },
    outsideDiameter: { heading: 'Outside diameter', kind: 'length', sign: 'positive' },
    workingPressure: { heading: 'Working pressure', kind: 'pressure', required: true, sign: 'positive' },
    bendRadius: { heading: 'Bend radius', kind: 'length', sign: 'positive' },
    coldest: { heading: 'Coldest', kind: 'temperature' },
    hottest: { heading: 'Hottest', kind: 'temperature' },
    vacuum: { heading: 'Vacuum', kind: 'vacuum' },
    fluids: { heading: 'Fluids', kind: 'text' },
    cover: { heading: 'Cover', kind: 'text' },
    shortens: { heading: 'Shortens', kind: 'fraction', sign: 'notNegative' },
    lengthens: { heading: 'Lengthens', kind: 'fraction', sign: 'notNegative' },
    massPerLength: { heading: 'Mass per length', kind: 'massPerLength', sign: 'notNegative' },
    pricePerLength: { heading: 'Price per length', kind: 'perLength', sign: 'notNegative' },
    reelLength: { heading: 'Reel length', kind: 'length', sign: 'notNegative' },
    note: { heading: 'Note', kind: 'text' },
  },
} as const satisfies TableSchema;

export type Hose = Row<typeof hosesTable>;
