import { nameText } from '../../core/catalogue/nameText';
import { sheetInFormula, SHEET_COLUMNS, cellAddress } from '../../workbook/a1';
import type { CellValue, Change, RangeAddress, RangeContent, Workbook } from '../../workbook/workbook';
import type { WorkbookCatalogue } from '../catalogue/workbookCatalogue';
import type { Part } from './partSearch';

/** What is put into the sheet for a part. */
export type PartCell = { readonly what: 'name' } | { readonly what: 'lookUp'; readonly heading: string };

/** Changes that insert a part, and the filled cells they would write over. */
export interface Insertion {
  readonly changes: readonly Change[];
  /** `B7 holds "Alder DN 12"`; empty where only blank cells are written. */
  readonly over: readonly string[];
  readonly message: string;
}

const shown = (value: CellValue, formula: string): string =>
  formula !== ''
    ? `the formula ${formula}`
    : typeof value === 'object'
      ? value.error
      : typeof value === 'string'
        ? `"${value}"`
        : String(value);

/** Catalogue, where the cell has that name; else its address, which stays when the formula is copied. */
function catalogueArgument({ isNamed, cell }: Pick<WorkbookCatalogue, 'isNamed' | 'cell'>): string {
  if (isNamed) return 'Catalogue';
  return `${sheetInFormula(cell.sheet)}!${cell.address.replace(/([A-Z]+)(\d+)/, '$$$1$$$2')}`;
}

/** `=HOSE.FITTINGDATA(Catalogue, B7, "cut-off")`. */
function lookUpFormula(
  standing: Pick<WorkbookCatalogue, 'isNamed' | 'cell'>,
  kind: Part['kind'],
  cell: string,
  heading: string,
): string {
  const id = kind === 'hose' ? 'HOSEDATA' : 'FITTINGDATA';
  return `=HOSE.${id}(${catalogueArgument(standing)},${cell},"${heading.toLowerCase()}")`;
}

const isPart = (value: CellValue, part: Part) =>
  typeof value === 'string' && value.trim().toLowerCase() === part.name.toLowerCase();

/**
 * Plans how a part gets into the sheet: its name into the selected cell, or a look-up beside it, which takes the name from the selected cell.
 * @param pair the selected cell and the one right of it
 */
export function insertion(
  part: Part,
  wanted: PartCell,
  pair: RangeContent,
  standing: Pick<WorkbookCatalogue, 'isNamed' | 'cell'>,
): Insertion {
  const { sheet, row, column, values, formulas } = pair;
  const at = (across: number): RangeAddress => ({ sheet, address: cellAddress({ row, column: column + across }) });
  const [cell, beside] = [at(0), at(1)];
  const holds = (across: number) => {
    const [value, formula] = [values[0]![across] ?? '', formulas[0]![across] ?? ''];
    return value === '' && formula === '' ? undefined : `${at(across).address} holds ${shown(value, formula)}`;
  };
  const stands = isPart(values[0]![0]!, part);
  const name: Change = { kind: 'values', at: cell, values: [[nameText(part.name)]] };
  const changes: Change[] = stands ? [] : [name];
  const over = stands ? [] : [holds(0)];
  if (wanted.what === 'name') {
    const message = stands
      ? `${cell.address} of sheet ${sheet} holds ${part.name} already.`
      : `Wrote ${part.name} into ${sheet}!${cell.address}.`;
    return { changes, over: over.filter(text => text !== undefined), message };
  }
  const formula = lookUpFormula(standing, part.kind, cell.address, wanted.heading);
  // A formula entered into a text cell stays text.
  changes.push({ kind: 'format', at: beside, numberFormat: 'General' }, { kind: 'formulas', at: beside, formulas: [[formula]] });
  over.push(holds(1));
  const message = `Wrote ${formula} into ${sheet}!${beside.address}${stands ? '' : ` and ${part.name} into ${cell.address}`}.`;
  return { changes, over: over.filter(text => text !== undefined), message };
}

/** The first selected cell and the one right of it. */
export async function selectedPair(workbook: Workbook): Promise<RangeContent> {
  const { sheet, row, column } = await workbook.selection();
  if (column + 1 >= SHEET_COLUMNS) throw new Error('There is no column right of the selected cell.');
  const cells = [0, 1].map(across => ({ sheet, address: cellAddress({ row, column: column + across }) }));
  const [left, right] = await workbook.read(cells);
  const joined = <T>(pick: (content: RangeContent) => readonly (readonly T[])[]) => [[pick(left!)[0]![0]!, pick(right!)[0]![0]!]];
  return {
    ...left!,
    values: joined(content => content.values),
    formulas: joined(content => content.formulas),
    formats: joined(content => content.formats),
  };
}
