import { TradeError } from '../tradeError';
import type { Catalogue } from './catalogue';
import { catalogueIndex } from './catalogueIndex';
import { catalogueUnits, type CatalogueUnits } from './catalogueUnits';
import { contentHash } from './contentHash';
import { markDuplicates } from './duplicates';
import { dieRanges, finishRows } from './finishRows';
import { handleText } from './handleText';
import { readHeadings, type Headings } from './headings';
import { refuseDialsOffScale } from './machineScale';
import type { RawTable } from './rawTable';
import { readRows, type ReadRow } from './readRows';
import { catalogueTables, REQUIRED_TABLES, TABLE_NAMES, type TableName } from './tables/catalogueTables';

/** The tables of a catalogue as they came, by name; those left out or without any cell filled are missing. */
export type RawTables = Readonly<Partial<Record<TableName, RawTable>>>;

type AllRows = Record<TableName, readonly ReadRow[]>;

function requireDiameters({ stated }: Headings): void {
  const has = (key: string) => stated.has(key);
  if ((has('crimpDiameter') && has('tolerance')) || (has('smallestDiameter') && has('largestDiameter'))) return;
  const advice = 'add Crimp diameter (mm) and Tolerance (mm), or Smallest diameter (mm) and Largest diameter (mm)';
  const missing = has('crimpDiameter') ? 'Tolerance' : 'Crimp diameter';
  throw new TradeError('blank', 'Crimps', `has no heading "${missing}"`, advice);
}

function allHeadings(tables: RawTables): Partial<Record<TableName, Headings>> {
  const headings: Partial<Record<TableName, Headings>> = {};
  for (const name of TABLE_NAMES) {
    const table = tables[name];
    if (table) headings[name] = readHeadings(catalogueTables[name], table);
    else if (REQUIRED_TABLES.includes(name)) {
      throw new TradeError('blank', name, 'is blank', `give the table ${catalogueTables[name].sheet} with its heading row`);
    }
  }
  requireDiameters(headings.crimps!);
  return headings;
}

function allRows(tables: RawTables, headings: Partial<Record<TableName, Headings>>, units: CatalogueUnits): AllRows {
  const rows = {} as AllRows;
  for (const name of TABLE_NAMES) {
    const found = headings[name];
    rows[name] = found ? readRows(catalogueTables[name], tables[name]!, found, units) : [];
  }
  finishRows('dies', rows.dies, { units, dieRanges: new Map() });
  const context = { units, dieRanges: dieRanges(rows.dies) };
  for (const name of TABLE_NAMES) {
    if (name !== 'dies') finishRows(name, rows[name], context);
    markDuplicates(name, rows[name]);
    if (name === 'machines') refuseDialsOffScale(rows.machines);
  }
  return rows;
}

const goodRows = <T>(rows: readonly ReadRow[]) => rows.filter(row => row.problems.length === 0).map(row => row.values as T);

/**
 * Reads and checks the tables of a catalogue.
 * @param tables heading row first; units stand in the headings, numbers are turned into the catalogue's units
 * @returns the catalogue with its handle; bad and duplicate rows are left out and stand among its problems
 * @throws TradeError where a required table, heading or unit is missing, or a unit is unknown
 */
export function readCatalogue(tables: RawTables): Catalogue {
  const headings = allHeadings(tables);
  const units = catalogueUnits(headings);
  const rows = allRows(tables, headings, units);
  const digest = contentHash(rows, units);
  const bad = TABLE_NAMES.flatMap(name => rows[name].filter(row => row.problems.length > 0));
  const catalogue = {
    hoses: goodRows<Catalogue['hoses'][number]>(rows.hoses),
    fittings: goodRows<Catalogue['fittings'][number]>(rows.fittings),
    crimps: goodRows<Catalogue['crimps'][number]>(rows.crimps),
    machines: goodRows<Catalogue['machines'][number]>(rows.machines),
    rates: goodRows<Catalogue['rates'][number]>(rows.rates),
    dies: goodRows<Catalogue['dies'][number]>(rows.dies),
    guards: goodRows<Catalogue['guards'][number]>(rows.guards),
    derating: goodRows<Catalogue['derating'][number]>(rows.derating),
    fluids: goodRows<Catalogue['fluids'][number]>(rows.fluids),
  };
  const { hoses, fittings, crimps } = catalogue;
  const handle = handleText({
    digest,
    units,
    hoses: hoses.length,
    fittings: fittings.length,
    crimps: crimps.length,
    leftOut: bad.length,
  });
  const problems = bad.flatMap(row => row.problems);
  return { ...catalogue, handle, digest, units, problems, leftOutRows: bad.length, rows, index: catalogueIndex(rows) };
}
