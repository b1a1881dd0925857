import type { Change, RangeAddress } from '../../workbook/workbook';
import type { PartsWorkbook } from './partsWorkbook';

const NAME = 'Catalogue';
const SHEET = 'Catalogue';

/** Where the Catalogue cell stands or comes, and what is written for it. */
export interface CataloguePlace {
  readonly cell: RangeAddress;
  readonly changes: readonly Change[];
  readonly newSheets: readonly string[];
  readonly overwrites: readonly string[];
  readonly message: readonly string[];
}

function nameChange({ names }: PartsWorkbook, cell: RangeAddress): Pick<CataloguePlace, 'changes' | 'overwrites' | 'message'> {
  const other = names.find(({ name }) => name.toLowerCase() === NAME.toLowerCase());
  if (other && other.at.sheet === cell.sheet && other.at.address === cell.address)
    return { changes: [], overwrites: [], message: [] };
  return {
    changes: [{ kind: 'name', name: NAME, refersTo: cell }],
    overwrites: other
      ? [`The name Catalogue stands for ${other.at.sheet}!${other.at.address} now and is moved to ${cell.sheet}!${cell.address}.`]
      : [],
    message: [`${cell.sheet}!${cell.address} gets the name Catalogue.`],
  };
}

function freeSheet(taken: readonly string[]): string {
  const used = new Set(taken.map(name => name.toLowerCase()));
  for (let number = 1; ; number++) {
    const name = number === 1 ? SHEET : `${SHEET} ${number}`;
    if (!used.has(name.toLowerCase())) return name;
  }
}

function newPlace(workbook: PartsWorkbook, formula: string, taken: string[]): CataloguePlace {
  const sheet = freeSheet(taken);
  taken.push(sheet);
  const cell = { sheet, address: 'A3' };
  const named = nameChange(workbook, cell);
  const texts = [
    ['Parts data of this workbook'],
    ['Look-up functions use the cell below. It shows which data they come from and changes when a table does.'],
  ];
  const notes = [
    ['The makers’ current data come first; this workbook does not replace them. No crimp data for a pair: do not assemble.'],
  ];
  return {
    cell,
    changes: [
      { kind: 'addSheet', sheet },
      { kind: 'values', at: { sheet, address: 'A1:A2' }, values: texts },
      { kind: 'values', at: { sheet, address: 'A5' }, values: notes },
      { kind: 'style', at: { sheet, address: 'A1' }, style: { bold: true, fontSize: 14, columnWidth: 420 } },
      { kind: 'style', at: { sheet, address: 'A2:A5' }, style: { wrap: true } },
      { kind: 'style', at: { sheet, address: 'A3' }, style: { bold: true } },
      { kind: 'formulas', at: cell, formulas: [[formula]] },
      ...named.changes,
    ],
    newSheets: [sheet],
    overwrites: named.overwrites,
    message: [`The new sheet ${sheet} gets the formula that reads the tables.`, ...named.message],
  };
}

/** The Catalogue cell: rewritten where it stands, else on a new sheet of its own. */
export function cataloguePlace(workbook: PartsWorkbook, formula: string, taken: string[]): CataloguePlace {
  const { standing } = workbook;
  if (!standing) return newPlace(workbook, formula, taken);
  const { cell } = standing;
  const named = nameChange(workbook, cell);
  const isSame = standing.formula === formula;
  const write: Change = { kind: 'formulas', at: cell, formulas: [[formula]] };
  return {
    cell,
    changes: [...(isSame ? [] : [write]), ...named.changes],
    newSheets: [],
    overwrites: named.overwrites,
    message: [
      ...(isSame ? [] : [`${cell.sheet}!${cell.address} reads the ranges with room to append: ${formula}`]),
      ...named.message,
    ],
  };
}
