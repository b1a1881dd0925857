import { measureUnit, type MeasureUnit } from '../units/measureUnit';
import type { TableColumn, Headings } from './headings';
import type { Field, FieldQuantity } from './tableSchema';
import type { TableName } from './tables/catalogueTables';

/** The units that a catalogue's numbers are turned into. */
export interface CatalogueUnits {
  /** Lengths: the unit of Fittings' Cut-off. */
  readonly length: MeasureUnit;
  /** Crimp diameters, tolerances, spreads, dies, steps: the unit of Crimps' Crimp diameter. */
  readonly diameter: MeasureUnit;
  /** The unit of Hoses' Working pressure. */
  readonly pressure: MeasureUnit;
  /** The unit of Hoses' Hottest, else that of Derating or Fluids; undefined where no temperature is given. */
  readonly temperature: MeasureUnit | undefined;
  /** Hoses' Mass per length; undefined where none is given. */
  readonly massPerLength: MeasureUnit | undefined;
  /** Masses: the unit in Hoses' Mass per length, else that of Fittings' Mass. */
  readonly mass: MeasureUnit | undefined;
  /** Prices per length: the unit of Hoses' Price per length, else that of Guards. */
  readonly perLength: MeasureUnit | undefined;
}

type AllHeadings = Readonly<Partial<Record<TableName, Headings>>>;

/** The catalogue's units, from the headings of its tables. */
export function catalogueUnits(headings: AllHeadings): CatalogueUnits {
  const column = (table: TableName, key: string): TableColumn | undefined =>
    headings[table]?.columns.find(candidate => candidate.key === key);
  const unit = (table: TableName, ...keys: string[]) => keys.map(key => column(table, key)?.unit).find(Boolean);
  const massPerLength = unit('hoses', 'massPerLength');
  const length = unit('fittings', 'cutOff')!;
  return {
    length,
    diameter: unit('crimps', 'crimpDiameter', 'smallestDiameter', 'tolerance') ?? length,
    pressure: unit('hoses', 'workingPressure')!,
    temperature: unit('hoses', 'hottest', 'coldest') ?? unit('derating', 'temperature') ?? unit('fluids', 'hottest', 'coldest'),
    massPerLength,
    mass: massPerLength ? measureUnit('mass', massPerLength.symbol.split('/')[0]!) : unit('fittings', 'mass'),
    perLength: unit('hoses', 'pricePerLength') ?? unit('guards', 'pricePerLength'),
  };
}

/** The unit that a field's numbers are turned into; undefined where it has none. */
export function unitOfField(units: CatalogueUnits, field: Field): MeasureUnit | undefined {
  if (field.kind === 'length') return field.lengths === 'diameter' ? units.diameter : units.length;
  if (field.kind === 'vacuum') return units.pressure;
  return units[field.kind as Exclude<FieldQuantity, 'length'>];
}
