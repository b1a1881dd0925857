import { addressOf } from '../../workbook/a1';
import type { RangeContent } from '../../workbook/workbook';
import { readUsedOrPieces } from './readRanges';
import { run } from './run';

const OURS = /(?:_xldudf_HOSE_|\bHOSE\.)[A-Z0-9]+\s*\(/i;
const STORED = /_xldudf_HOSE_([A-Z0-9]+)/gi;

interface Unknown {
  readonly address: string;
  readonly formula: string;
}

function unknownIn({ row, column, values, formulas }: RangeContent): Unknown[] {
  return formulas.flatMap((cells, r) =>
    cells.flatMap((formula, c) => {
      const value = values[r]![c];
      if (typeof value !== 'object' || value.error !== '#NAME?' || !OURS.test(formula)) return [];
      const address = addressOf({ row: row + r, column: column + c, rows: 1, columns: 1 });
      return [{ address, formula: formula.replace(STORED, 'HOSE.$1') }];
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

/**
 * Enters again every formula of ours that shows #NAME?, as happens to a file that was opened before the add-in; sheet by sheet.
 * @throws Error that names the protected sheets with such formulas, after those of all other sheets were entered
 */
export async function reenterUnknownNames(): Promise<number> {
  const left: string[] = [];
  let count = 0;
  for (const { name, isProtected } of await sheetsWithProtection()) {
    const used = await readUsedOrPieces(name);
    const unknown = used ? unknownIn(used) : [];
    if (unknown.length === 0) continue;
    if (isProtected) {
      left.push(`"${name}"`);
      continue;
    }
    await run(async context => {
      const worksheet = context.workbook.worksheets.getItem(name);
      for (const { address, formula } of unknown) worksheet.getRange(address).formulas = [[formula]];
      await context.sync();
    });
    count += unknown.length;
  }
  if (left.length === 0) return count;
  throw new Error(
    `Entered ${count} again. Formulas on protected sheets were left: ${left.join(', ')}. Lift the protection, then try again.`,
  );
}
