import { cellAddress } from '../../workbook/a1';
import type { RangeAddress, RangeContent } from '../../workbook/workbook';
import { spillParentsOf } from './lookUp';
import { readUsedOrPieces } from './readRanges';
import { run } from './run';

/**
 * A call of ours in any form that Excel shows: `HOSE.CUTLENGTH(`; as a file stores it, `_xldudf_HOSE_CUTLENGTH(`, where the file was opened
 * before the add-in (OfficeDev/office-js issues 6611 and 3558); and either with another workbook before it, `'C:\…\FUNCRES.XLAM'!_xldudf_…`
 * or `[2]!_xldudf_…`, which other add-ins bring about (issues 4811 and 2568). Texts and names of sheets are passed over.
 */
const CALL =
  /"(?:[^"]|"")*"|((?:'(?:[^']|'')*'|[^\s'"(),;:+\-*/^&=<>{}@!]+)!)?(_xldudf_HOSE_|\bHOSE\.)([A-Z0-9]+)(?=\s*\()|'(?:[^']|'')*'/gi;

interface Unknown {
  readonly address: string;
  /** As it is to be entered. */
  readonly formula: string;
  /** Whether the cell shows an error: what shows none may be filled from another cell. */
  readonly isError: boolean;
}

/** The formula as people type it; undefined where it holds no call of ours. */
function typed(formula: string): string | undefined {
  let isOurs = false;
  const plain = formula.replace(CALL, (whole: string, _workbook: string, _form: string, id?: string) => {
    if (!id) return whole;
    isOurs = true;
    return `HOSE.${id}`;
  });
  return isOurs ? plain : undefined;
}

/** Found by the formula: what the grid shows as #NAME? may be read as another error, or as the last value. */
function unknownIn({ row, column, values, formulas }: RangeContent): Unknown[] {
  return formulas.flatMap((cells, r) =>
    cells.flatMap((formula, c) => {
      const plain = typed(formula);
      if (plain === undefined) return [];
      const value = values[r]![c];
      const isError = typeof value === 'object';
      if (plain === formula && !(isError && value.error === '#NAME?')) return [];
      return [{ address: cellAddress({ row: row + r, column: column + c }), formula: plain, isError }];
    }),
  );
}

const sheetsWithProtection = () =>
  run(async context => {
    const { worksheets } = context.workbook;
    worksheets.load('items/name,items/protection/protected');
    await context.sync();
    return worksheets.items.map(({ name, protection }) => ({ name, isProtected: protection.protected }));
  });

/** Cells in one request: with its object each takes some hundred bytes, and Excel on the web takes 5 MB. */
const CELLS_A_REQUEST = 2000;

async function enter(sheet: string, cells: readonly Unknown[]): Promise<void> {
  await run(async context => {
    const worksheet = context.workbook.worksheets.getItem(sheet);
    for (const [index, { address, formula }] of cells.entries()) {
      worksheet.getRange(address).formulas = [[formula]];
      if (index % CELLS_A_REQUEST === CELLS_A_REQUEST - 1) await context.sync();
    }
    await context.sync();
  });
}

/** Without the cells that another formula fills: it is that one which is entered. An error fills one cell. */
async function withoutFilled(sheet: string, unknown: readonly Unknown[]): Promise<readonly Unknown[]> {
  const addresses = unknown.filter(({ isError }) => !isError).map(({ address }) => address);
  if (addresses.length === 0) return unknown;
  const parents = await run(context => spillParentsOf(context, sheet, addresses));
  const filled = new Set(addresses.filter((_, index) => parents[index]));
  return unknown.filter(({ address }) => !filled.has(address));
}

/** The unknown formulas of a sheet that stand in cells of their own. */
async function unknownOn(sheet: string): Promise<readonly Unknown[]> {
  const used = await readUsedOrPieces(sheet);
  return used ? withoutFilled(sheet, unknownIn(used)) : [];
}

function sentenceOf(count: number, isLocked: readonly string[], still: readonly RangeAddress[]): string {
  const [first] = still;
  const cells = `${still.length} ${still.length === 1 ? 'cell is' : 'cells are'}`;
  return [
    `Entered ${count} again.`,
    isLocked.length > 0 && `Formulas on protected sheets were left: ${isLocked.join(', ')}. Lift the protection, then try again.`,
    first &&
      `${cells} still unknown to Excel, the first is ${first.sheet}!${first.address}: close the workbook, open a blank one, open the Benchrow pane there, then open the workbook again.`,
  ]
    .filter(Boolean)
    .join(' ');
}

/**
 * Enters again every formula of ours that Excel does not know, as happens to a file that was opened before the add-in; sheet by sheet. To
 * calculate again does not help, to enter again does (OfficeDev/office-js issue 6611). What was entered is read back.
 * @returns how many were entered and are known now
 * @throws Error that names the protected sheets with such formulas, and the first cell that is still unknown, after all others were entered
 */
export async function reenterUnknownNames(): Promise<number> {
  const isLocked: string[] = [];
  const still: RangeAddress[] = [];
  let count = 0;
  for (const { name, isProtected } of await sheetsWithProtection()) {
    const unknown = await unknownOn(name);
    if (unknown.length === 0) continue;
    if (isProtected) {
      isLocked.push(`"${name}"`);
      continue;
    }
    await enter(name, unknown);
    const left = await unknownOn(name);
    still.push(...left.map(({ address }) => ({ sheet: name, address })));
    count += Math.max(0, unknown.length - left.length);
  }
  if (isLocked.length + still.length === 0) return count;
  throw new Error(sentenceOf(count, isLocked, still));
}
