import type { Change, RangeContent } from '../../workbook/workbook';
import { addressOf } from '../../workbook/a1';
import { blockOfContent } from './filledCells';
import { plainValue } from '../../workbook/cellWords';

/** The number format that a column has in the first row with something in it below its first. */
function columnFormat({ formats, values }: RangeContent, column: number): string {
  const row = values.findIndex((cells, index) => index > 0 && cells[column] !== '');
  return row < 0 ? 'General' : formats[row]![column]!;
}

/** A new sheet with the values that stand on another, at the same places; formulas become their values. */
export function datedCopy(content: RangeContent, name: string): readonly Change[] {
  const block = blockOfContent(content);
  const values = content.values.map(cells => cells.map(plainValue));
  const formats = values[0]!.flatMap((_, column): Change[] => {
    const numberFormat = columnFormat(content, column);
    if (numberFormat === 'General') return [];
    const at = { sheet: name, address: addressOf({ ...block, column: block.column + column, columns: 1 }) };
    return [{ kind: 'format', at, numberFormat }];
  });
  return [
    { kind: 'addSheet', sheet: name },
    ...formats,
    { kind: 'values', at: { sheet: name, address: addressOf(block) }, values },
  ];
}
