import type { Row, TableSchema } from '../tableSchema';

/**
 * Table `Crimps`: one row a hose with a fitting, or with all fittings of a pattern. The diameter stands either as Crimp diameter and
 * Tolerance or as Smallest and Largest diameter; a row that was read has the first two.
 */
export const crimpsTable = {
  sheet: 'Crimps',
  fields: {
    hose: { heading: 'Hose', kind: 'name', required: true },
    fitting: { heading: 'Fitting', kind: 'name', required: true },
    ferrule: { heading: 'Ferrule', kind: 'text' },
    die: { heading: 'Die', kind: 'name', required: true },
    dial: { heading: 'Dial', kind: 'number', required: true },
    crimpDiameter: { heading: 'Crimp diameter', kind: 'length', lengths: 'diameter', sign: 'positive', mayBeDate: true },
    tolerance: { heading: 'Tolerance', kind: 'length', lengths: 'diameter', sign: 'positive', mayBeDate: true },
    smallestDiameter: { heading: 'Smallest diameter', kind: 'length', lengths: 'diameter', sign: 'positive', mayBeDate: true },
    largestDiameter: { heading: 'Largest diameter', kind: 'length', lengths: 'diameter', sign: 'positive', mayBeDate: true },
    largestSpread: { heading: 'Largest spread', kind: 'length', lengths: 'diameter', sign: 'notNegative' },
    crimpLength: { heading: 'Crimp length', kind: 'length', sign: 'notNegative' },
    skiveOutside: { heading: 'Skive outside', kind: 'length', sign: 'notNegative' },
    skiveInside: { heading: 'Skive inside', kind: 'length', sign: 'notNegative' },
    insertionDepth: { heading: 'Insertion depth', kind: 'length', sign: 'notNegative' },
    note: { heading: 'Note', kind: 'text' },
  },
} as const satisfies TableSchema;

export type CatalogueCrimp = Row<typeof crimpsTable>;

/** A crimp row that was read: its diameter and tolerance are known. */
export type Crimp = CatalogueCrimp & { readonly crimpDiameter: number; readonly tolerance: number };
