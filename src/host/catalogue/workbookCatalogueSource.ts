import type { Cells } from '../cells/singles';
import type { CellValue, RangeAddress, Workbook } from '../workbook';
import { callsCatalogue, catalogueReferences, type TableReference } from './catalogueFormula';
import type { CatalogueSource } from './catalogueSource';

type Names = Awaited<ReturnType<Workbook['names']>>;

const CATALOGUE_NAME = 'catalogue';

/** A cell as a host passes it to a function: an error value as an object. */
export function passedCell(value: CellValue): unknown {
  return typeof value === 'object' ? { type: 'Error', basicType: 'Error', basicValue: value.error } : value;
}

/** The range that a reference of a CATALOGUE formula stands for; undefined where the workbook does not say. */
export function rangeOfReference(reference: TableReference, names: Names): RangeAddress | undefined {
  if (reference.kind === 'range') return { sheet: reference.sheet, address: reference.address };
  return names.find(({ name }) => name.toLowerCase() === reference.name.toLowerCase())?.at;
}

async function readTables(
  workbook: Workbook,
  references: readonly (TableReference | null)[],
  names: Names,
): Promise<readonly Cells[] | undefined> {
  const places = references.map(reference => (reference ? rangeOfReference(reference, names) : null));
  if (places.includes(undefined)) return undefined;
  const contents = await workbook.read(places.filter(place => !!place));
  let next = 0;
  return places.map(place => (place ? contents[next++]!.values.map(row => row.map(passedCell)) : null));
}

interface Found {
  readonly sheet: string;
  readonly formula: string;
  readonly row: number;
  readonly column: number;
}

async function formulas(workbook: Workbook): Promise<Found[]> {
  const found: Found[] = [];
  for (const sheet of await workbook.sheets()) {
    const used = await workbook.used(sheet);
    used?.formulas.forEach((cells, row) =>
      cells.forEach((formula, column) => {
        if (callsCatalogue(formula)) found.push({ sheet, formula, row: used.row + row, column: used.column + column });
      }),
    );
  }
  return found;
}

/** Where a call's tables are read again through the Workbook port: for hosts other than Excel, and for tests. */
export function workbookCatalogueSource(workbook: Workbook): CatalogueSource {
  return {
    async *calls() {
      const names = await workbook.names();
      const named = names.find(({ name }) => name.toLowerCase() === CATALOGUE_NAME)?.at;
      const found = await formulas(workbook);
      const isNamed = ({ sheet }: Found) => sheet === named?.sheet;
      for (const { sheet, formula } of [...found.filter(isNamed), ...found.filter(call => !isNamed(call))]) {
        const references = catalogueReferences(formula, sheet);
        const tables = references && (await readTables(workbook, references, names));
        if (tables) yield tables;
      }
    },
  };
}
