import { TradeError } from '../core/tradeError';
import { Decimal } from '../core/units/decimal';
import type { CatalogueUnits } from '../core/catalogue/catalogueUnits';
import { number, quoted, type CellReader, type NumberRules } from '../cells/readers';

const readWhole = number({ sign: 'positive', zeroIsBlank: true, marks: 'noLength', hint: 'enter a whole number', like: '12' });
const readPressure = number({ marks: 'noLength', hint: 'enter yes, no or a pressure', like: '0.6' });
const readDegrees = number({ marks: 'noLength', hint: 'enter an angle in degrees', like: '90' });

/** What inch and foot marks mean to a length in the catalogue's unit: refused in a metric one, feet turned into inches or the other way. */
function marksOf({ length: { symbol } }: CatalogueUnits): Pick<NumberRules, 'millimetres' | 'marks'> {
  if (symbol === 'mm') return { millimetres: true };
  return { marks: symbol === 'in' ? 'inches' : symbol === 'ft' ? 'feet' : 'refused' };
}

/** A reader of lengths in the unit of a catalogue. */
export function lengthReader(units: CatalogueUnits, hint = 'enter a length', mayBeDate = true): CellReader<Decimal> {
  return number({ sign: 'positive', zeroIsBlank: true, mayBeDate, hint, ...marksOf(units) });
}

/** A reader of overall lengths: 40 m in mm is a long hose, any other unit makes a date of such a number. */
export const overallReader = (units: CatalogueUnits) => lengthReader(units, 'enter a length', units.length.symbol !== 'mm');

/** Reads how many are made: a whole number. */
export const readQuantity: CellReader<Decimal> = (cell, label) => {
  const value = readWhole(cell, label);
  if (value.isInteger()) return value;
  throw new TradeError('range', label, `is ${quoted(cell)}`, 'enter a whole number of assemblies');
};

/** Reads a temperature, in the catalogue's unit. */
export const readTemperature = number({ marks: 'noLength', hint: 'enter a temperature', like: '70 or -10' });

/** Reads an angle in degrees; `straight` is 0. */
export const readAngle: CellReader<Decimal> = (cell, label) => {
  const word = typeof cell === 'string' ? cell.trim().toLowerCase() : cell;
  if (word === 'straight') return new Decimal(0);
  return readDegrees(typeof word === 'string' ? word.replace(/\s*(?:°|º|deg)$/, '') : word, label);
};

/** Reads the vacuum that is asked for: a pressure, or yes; no and 0 ask for none. */
export const readVacuum: CellReader<Decimal | 'yes' | undefined> = (cell, label) => {
  const word = String(cell).trim().toLowerCase();
  if (word === 'yes' || word === 'true') return 'yes';
  if (word === 'no' || word === 'false') return undefined;
  const value = readPressure(cell, label);
  return value.isZero() ? undefined : value.abs();
};
