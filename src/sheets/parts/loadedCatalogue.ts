import type { Catalogue } from '../../core/catalogue/catalogue';
import { catalogueDiff, type RowChange } from '../../core/catalogue/catalogueDiff';
import type { CatalogueUnits } from '../../core/catalogue/catalogueUnits';
import type { RawTable } from '../../core/catalogue/rawTable';
import { readCatalogue, type RawTables } from '../../core/catalogue/readCatalogue';
import { catalogueTables, REQUIRED_TABLES, type TableName } from '../../core/catalogue/tables/catalogueTables';
import { splitHeading } from '../../core/units/headingUnit';
import { headingKey } from '../../core/catalogue/partName';
import type { TableSchema } from '../../core/catalogue/tableSchema';
import { commaNumbers, mapHeadings, type HeadingMap } from './mapHeadings';
import { rawTablesOf, type WorkbookCatalogue } from '../catalogue/workbookCatalogue';
import { unconfirmed, withProposals } from './headingFixes';
import type { LoadedTable } from './loadedTable';
import { catalogueNotes } from '../../core/catalogue/catalogueNotes';
import { placedGroups, placedNote, placedProblem, tableOfProblem, type PlacedProblem, type TableOrigin } from './placedProblem';
import { errorSentence } from '../../workbook/errorSentence';

/** A loaded table with what it is taken for, its headings mapped. */
export interface ChosenTable {
  readonly loaded: LoadedTable;
  readonly table: TableName;
  readonly raw: RawTable;
  /** Some heading was replaced. */
  readonly isMapped: boolean;
  /** Headings as they came that are read as something that was only proposed. */
  readonly unconfirmed: readonly string[];
}

/** What the workbook's catalogue would be with the loaded tables in it. */
export interface LoadedCatalogue {
  readonly chosen: readonly ChosenTable[];
  readonly catalogue: Catalogue | undefined;
  /** Why there would be none. */
  readonly reason: string;
  /** Problems of the loaded tables, and of standing ones that come about by them. */
  readonly problems: readonly PlacedProblem[];
  /** What looks wrong in rows that stay. */
  readonly notes: readonly PlacedProblem[];
  /** Against the catalogue that stands; undefined where none stands that can be read. */
  readonly changes: readonly RowChange[] | undefined;
  /** The units that change, where they do. */
  readonly unitChange: string;
}

/** Headings mapped by hand, by table. */
export type HeadingMaps = ReadonlyMap<TableName, HeadingMap>;

const NO_MAP: HeadingMap = new Map();

const TEXTS: ReadonlySet<string> = new Set(['name', 'text', 'date', 'yesNo']);

/** Columns whose heading was replaced by one of a field of numbers. */
function mappedToNumbers(schema: TableSchema, [came = []]: RawTable, [named = []]: RawTable): ReadonlySet<number> {
  const fields = Object.values(schema.fields).filter(({ kind }) => !TEXTS.has(kind));
  const keys = new Set(fields.map(({ heading }) => headingKey(heading)));
  return new Set(
    named.flatMap((cell, column) => {
      if (cell === came[column] || typeof cell !== 'string') return [];
      return keys.has(headingKey(splitHeading(cell).name)) ? [column] : [];
    }),
  );
}

/** The loaded tables that are taken for one of the catalogue's. */
export function chosenTables(
  tables: readonly LoadedTable[],
  taken: ReadonlyMap<string, TableName>,
  maps: HeadingMaps,
): readonly ChosenTable[] {
  return tables.flatMap(loaded => {
    const table = taken.get(loaded.id);
    if (!table) return [];
    const [schema, own] = [catalogueTables[table], maps.get(table) ?? NO_MAP];
    const map = withProposals(schema, loaded.raw[0] ?? [], own);
    const named = mapHeadings(loaded.raw, map);
    const raw = loaded.decimalComma ? commaNumbers(named, mappedToNumbers(schema, loaded.raw, named)) : named;
    const isMapped = raw[0]?.some((cell, index) => cell !== loaded.raw[0]![index]) ?? false;
    return [{ loaded, table, raw, isMapped, unconfirmed: unconfirmed(schema, loaded.raw, own) }];
  });
}

function doubled(chosen: readonly ChosenTable[]): string | undefined {
  const twice = chosen.find(({ table }, index) => chosen.findIndex(other => other.table === table) < index);
  if (!twice) return undefined;
  const { sheet } = catalogueTables[twice.table];
  return `Two tables are taken for ${sheet}. If both hold ${sheet.toLowerCase()}, put their rows under one heading row and load that; else choose for one of them that it is something else.`;
}

function missing(tables: RawTables): string | undefined {
  const names = REQUIRED_TABLES.filter(name => !tables[name]).map(name => catalogueTables[name].sheet);
  if (names.length === 0) return undefined;
  return `There is no table ${names.join(', no table ')} yet. Load ${names.length > 1 ? 'them' : 'it'} as well, or choose above which table it is.`;
}

function originsOf(chosen: readonly ChosenTable[], standing: WorkbookCatalogue | undefined): Map<TableName, TableOrigin> {
  const origins = new Map<TableName, TableOrigin>();
  for (const { table, content, raw } of standing?.tables ?? []) {
    const { sheet, row, column } = content;
    origins.set(table, { label: `sheet ${sheet}`, raw, firstRow: row, firstColumn: column, sheet });
  }
  for (const { table, raw, loaded } of chosen) origins.set(table, { ...loaded, raw });
  return origins;
}

const unitText = (units: CatalogueUnits) =>
  [...new Set(Object.values(units).flatMap(unit => (unit ? [unit.symbol] : [])))].join(', ');

function unitChange(before: Catalogue, after: Catalogue): string {
  const [old, now] = [unitText(before.units), unitText(after.units)];
  return old === now ? '' : `${old} → ${now}`;
}

/** Reads the catalogue that the loaded tables and those standing that they do not replace would make. */
export function loadedCatalogue(chosen: readonly ChosenTable[], standing: WorkbookCatalogue | undefined): LoadedCatalogue {
  const none = { chosen, catalogue: undefined, problems: [], notes: [], changes: undefined, unitChange: '' };
  const tables: RawTables = { ...rawTablesOf(standing?.tables ?? []), ...rawTablesOf(chosen) };
  const obstacle = doubled(chosen) ?? missing(tables);
  if (obstacle) return { ...none, reason: obstacle };
  try {
    const catalogue = readCatalogue(tables);
    const origins = originsOf(chosen, standing);
    const before = standing?.catalogue;
    return {
      chosen,
      catalogue,
      reason: '',
      problems: placedGroups(catalogue.problems.map(problem => placedProblem(problem, origins.get(tableOfProblem(problem))!))),
      notes: placedGroups(catalogueNotes(catalogue).map(note => placedNote(note, origins.get(tableOfProblem(note))!))),
      changes: before && catalogueDiff(before, catalogue),
      unitChange: before ? unitChange(before, catalogue) : '',
    };
  } catch (error) {
    return { ...none, reason: errorSentence(error) };
  }
}

/** Problems of the catalogue that stands. */
export function catalogueProblems(standing: WorkbookCatalogue): readonly PlacedProblem[] {
  const origins = originsOf([], standing);
  const problems = standing.catalogue?.problems ?? [];
  return placedGroups(problems.map(problem => placedProblem(problem, origins.get(tableOfProblem(problem))!)));
}
