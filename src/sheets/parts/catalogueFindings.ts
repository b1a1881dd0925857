import type { Catalogue } from '../../core/catalogue/catalogue';
import { catalogueNotes } from '../../core/catalogue/catalogueNotes';
import { patternReaches } from '../../core/catalogue/crimpFor';
import { rateKey } from '../../core/catalogue/duplicates';
import { partKey } from '../../core/catalogue/partName';
import { isFerrule } from '../../core/catalogue/partsMatch';
import type { TableName } from '../../core/catalogue/tables/catalogueTables';
import { NEEDED_RATES } from '../../core/catalogue/rateNames';
import type { RangeAddress } from '../../workbook/workbook';
import { TablePlace } from '../catalogue/tablePlace';
import type { UsableCatalogue } from '../catalogue/usableCatalogue';
import { FindingPlaces } from './findingPlaces';

/** Kinds of finding, in the order in which they are shown. */
export const FINDING_TITLES = {
  price: 'Without price',
  rate: 'Missing rates',
  cutOff: 'Without cut-off',
  rating: 'Without working pressure',
  crimp: 'Without crimp data',
  ferrule: 'Ferrules missing in Fittings',
  leftOut: 'Other rows left out',
  note: 'Check (the rows are used)',
  old: 'Old prices',
} as const;
export type FindingKind = keyof typeof FINDING_TITLES;

/** Something an estimator should know about the catalogue. */
export interface CatalogueFinding {
  readonly kind: FindingKind;
  readonly part: string;
  readonly sentence: string;
  /** The cell to look at. */
  readonly at: RangeAddress;
}

/** Fittings for which some hose has crimp data, by an exact row or by a pattern. */
function crimped(catalogue: Catalogue): ReadonlySet<string> {
  const { index, hoses, fittings } = catalogue;
  const found = new Set<string>();
  for (const hose of hoses) {
    const crimps = index.crimps.get(partKey(hose.hose));
    if (!crimps) continue;
    for (const [key, { entry }] of crimps.exact) if (entry.row) found.add(key);
    const patterns = crimps.patterns.filter(({ entry }) => entry.row);
    if (patterns.length === 0) continue;
    for (const fitting of fittings) {
      if (patterns.some(({ start }) => patternReaches(catalogue, start, hose, fitting))) found.add(partKey(fitting.fitting));
    }
  }
  return found;
}

function withoutPrice({ hoses, fittings, guards }: Catalogue, places: FindingPlaces): CatalogueFinding[] {
  const finding = (table: TableName, part: string, heading: string): CatalogueFinding => ({
    kind: 'price',
    part,
    sentence: `no ${heading.toLowerCase()}`,
    at: places.of(table, part, heading),
  });
  return [
    ...hoses.filter(row => row.pricePerLength === undefined).map(row => finding('hoses', row.hose, 'Price per length')),
    ...fittings.filter(row => row.price === undefined).map(row => finding('fittings', row.fitting, 'Price')),
    ...guards.filter(row => row.pricePerLength === undefined).map(row => finding('guards', row.guard, 'Price per length')),
  ];
}

/** Fittings that can be quoted, but whose assemblies have no rating. */
function withoutRating({ fittings }: Catalogue, places: FindingPlaces): CatalogueFinding[] {
  return fittings
    .filter(row => !isFerrule(row) && row.workingPressure === undefined)
    .map(({ fitting }) => ({
      kind: 'rating',
      part: fitting,
      sentence: 'no working pressure: an assembly with it has no rating',
      at: places.of('fittings', fitting, 'Working pressure'),
    }));
}

/** Rates that are in no row, not even in one that is left out: no cost of an assembly is known without them. */
function missingRates({ index }: Catalogue, { tables }: UsableCatalogue): CatalogueFinding[] {
  const place = new TablePlace((tables.rates ?? tables.hoses)!);
  return NEEDED_RATES.filter(name => !index.rates.has(rateKey(name))).map(part => ({
    kind: 'rate',
    part,
    sentence: 'not in the table Rates: no cost is known without it (0 where there is none)',
    at: place.cell(place.headingRow, 0),
  }));
}

function withoutCrimp(catalogue: Catalogue, places: FindingPlaces): CatalogueFinding[] {
  const { hoses, fittings, index } = catalogue;
  const hasCrimps = (hose: string) => {
    const crimps = index.crimps.get(partKey(hose));
    return !!crimps && [...crimps.exact.values(), ...crimps.patterns].some(({ entry }) => entry.row);
  };
  const known = crimped(catalogue);
  const bare = fittings.filter(row => !isFerrule(row) && !known.has(partKey(row.fitting)));
  return [
    ...hoses
      .filter(row => !hasCrimps(row.hose))
      .map(({ hose }) => ({
        kind: 'crimp' as const,
        part: hose,
        sentence: 'no crimp row with any fitting: do not assemble',
        at: places.of('hoses', hose, 'Hose'),
      })),
    ...bare.map(({ fitting }) => ({
      kind: 'crimp' as const,
      part: fitting,
      sentence: 'no crimp row with any hose: do not assemble',
      at: places.of('fittings', fitting, 'Fitting'),
    })),
  ];
}

/** Ferrules that crimp rows name and Fittings does not list: their price is in no cost. */
function strayFerrules({ crimps, index }: Catalogue, found: UsableCatalogue): CatalogueFinding[] {
  const place = new TablePlace(found.tables.crimps!);
  const rows = place.rowsByName('Ferrule');
  const names = new Map(crimps.flatMap(({ ferrule }) => (ferrule ? [[partKey(ferrule), ferrule] as const] : [])));
  return [...names]
    .filter(([key]) => !index.fittings.get(key)?.row)
    .map(([key, part]) => ({
      kind: 'ferrule',
      part,
      sentence: 'named in Crimps, not among Fittings: its price is in no cost',
      at: place.cell(rows.get(key) ?? place.headingRow, place.column('Ferrule') ?? 0),
    }));
}

/** `Hoses row 7` of the sheet on which it stands; the sheet alone for a table as a whole. */
const rowLabel = (row: number, { sheet, address }: RangeAddress) =>
  row === 0 ? sheet : `${sheet} row ${/\d+$/.exec(address)![0]}`;

function leftOut({ problems }: Catalogue, places: FindingPlaces): CatalogueFinding[] {
  return problems.map(problem => {
    const isCutOff = problem.sheet === 'Fittings' && problem.column === 'Cut-off' && problem.received === 'blank';
    const at = places.row(problem);
    return {
      kind: isCutOff ? 'cutOff' : 'leftOut',
      part: rowLabel(problem.row, at),
      sentence: `${problem.column} is ${problem.received}, expected ${problem.expected}: the row is left out`,
      at,
    };
  });
}

/** What looks wrong in rows that are used all the same. */
function noticed(catalogue: Catalogue, places: FindingPlaces): CatalogueFinding[] {
  return catalogueNotes(catalogue).map(note => {
    const at = places.row(note);
    return { kind: 'note', part: rowLabel(note.row, at), sentence: note.text, at };
  });
}

/** What an estimator should know about the catalogue, apart from the age of its prices; kind by kind, in table order. */
export function catalogueFindings(found: UsableCatalogue): readonly CatalogueFinding[] {
  const { catalogue } = found;
  const places = new FindingPlaces(found);
  const problems = leftOut(catalogue, places);
  return [
    ...withoutPrice(catalogue, places),
    ...missingRates(catalogue, found),
    ...problems.filter(({ kind }) => kind === 'cutOff'),
    ...withoutRating(catalogue, places),
    ...withoutCrimp(catalogue, places),
    ...strayFerrules(catalogue, found),
    ...problems.filter(({ kind }) => kind === 'leftOut'),
    ...noticed(catalogue, places),
  ];
}
