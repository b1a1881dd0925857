import { blockOf } from './a1';
import type { CellValue, RangeAddress, Workbook } from './workbook';
import { callsCatalogue, catalogueReferences, type TableReference } from './catalogueFormula';
import type { CatalogueSource, PassedCells } from './catalogueSource';
import { tablePlaces } from './tablePlaces';

const CATALOGUE_NAME = 'catalogue';

/** A cell as a host passes it to a function: an error value as an object. */
function passedCell(value: CellValue): unknown {
  return typeof value === 'object' ? { type: 'Error', basicType: 'Error', basicValue: value.error } : value;
}

async function readTables(
  workbook: Workbook,
  references: readonly (TableReference | null)[],
): Promise<readonly PassedCells[] | undefined> {
  const places = await tablePlaces(workbook, references);
  if (places.includes(undefined)) return undefined;
  const contents = await workbook.read(places.filter(place => !!place));
  let next = 0;
  return places.map(place => (place ? contents[next++]!.values.map(row => row.map(passedCell)) : null));
}

/** A cell with a CATALOGUE formula, its place counted from 0. */
export interface CatalogueCell {
  readonly sheet: string;
  readonly formula: string;
  readonly row: number;
  readonly column: number;
}

function isAt(cell: CatalogueCell, at: RangeAddress | undefined): boolean {
  const block = at && blockOf(at.address);
  return !!block && at.sheet === cell.sheet && block.row === cell.row && block.column === cell.column;
}

/** All cells of the workbook with a CATALOGUE formula, that of the cell named Catalogue first. */
export async function catalogueCells(workbook: Workbook): Promise<readonly CatalogueCell[]> {
  const named = (await workbook.names()).find(({ name }) => name.toLowerCase() === CATALOGUE_NAME)?.at;
  const found: CatalogueCell[] = [];
  for (const sheet of await workbook.sheets()) {
    const used = await workbook.used(sheet);
    used?.formulas.forEach((cells, row) =>
      cells.forEach((formula, column) => {
        if (callsCatalogue(formula)) found.push({ sheet, formula, row: used.row + row, column: used.column + column });
      }),
    );
  }
  return [...found.filter(cell => isAt(cell, named)), ...found.filter(cell => !isAt(cell, named))];
}

/** Where a call's tables are read again through the Workbook port: for hosts other than Excel, and for tests. */
export function workbookCatalogueSource(workbook: Workbook): CatalogueSource {
  return {
    async *calls() {
      for (const { sheet, formula } of await catalogueCells(workbook)) {
        const references = catalogueReferences(formula, sheet);
        const tables = references && (await readTables(workbook, references));
        if (tables) yield tables;
      }
    },
  };
}
