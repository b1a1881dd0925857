import { addressOf } from '../../../src/workbook/a1';
import type { Workbook } from '../../../src/workbook/workbook';

/** 3010 psi are 207.53 bar (NIST SP 811, B.8: 1 psi = 6.894 757 kPa): rounded half up they would be read as 208. */
export const PSI = 3010;
export const BAR = 207.532194497388;

/** Changes a sample whose hoses are rated in bar, so that all its couplings are rated 3010 psi. */
export async function rateFittingsInPsi(port: Workbook): Promise<void> {
  const { values, row, column, sheet } = (await port.used('Fittings'))!;
  const head = values.findIndex(cells => cells.includes('Working pressure (bar)'));
  const at = values[head]!.indexOf('Working pressure (bar)');
  const rated = values.slice(head + 1).map(cells => [typeof cells[at] === 'number' ? PSI : '']);
  const address = addressOf({ row: row + head, column: column + at, rows: rated.length + 1, columns: 1 });
  await port.write([{ kind: 'values', at: { sheet, address }, values: [['Working pressure (psi)'], ...rated] }]);
}
