import { Decimal } from '../../../src/core/units/decimal';
import { addressOf } from '../../../src/workbook/a1';
import { pieceBook } from '../../../src/sheets/pieces/pieceBook';
import { planPieces } from '../../../src/sheets/pieces/planPieces';
import { rejections, statusOfPiece } from '../../../src/sheets/pieces/pieceStatus';
import { readPieces } from '../../../src/sheets/pieces/readPieces';
import type { PieceRole } from '../../../src/sheets/pieces/pieceColumns';
import { workbookCatalogue } from '../../../src/sheets/catalogue/workbookCatalogue';
import { openSample } from '../quote/openSample';
import { jobsOf, options, reelsFor } from './pieceSheets';

let sample: Awaited<ReturnType<typeof openSample>>;
beforeAll(async () => {
  sample = await openSample();
});
afterAll(() => sample.dispose());

test('the sample week on a sheet that calculates: verdicts come from the functions, lengths are judged against the limits', async () => {
  const { port } = sample;
  const jobs = await jobsOf(port, 'mm', 'Week', 5);
  const catalogue = (await workbookCatalogue(port))?.catalogue;
  const plan = planPieces(await pieceBook(port), reelsFor(jobs, 'mm'), jobs.lines, options('mm', { catalogue, machine: '' }));
  await sample.write(plan.writing.changes);
  const { pieces, table } = (await readPieces(port))!;
  expect(pieces).toHaveLength(jobs.lines.reduce((sum, { quantity }) => sum + quantity!, 0));
  expect(pieces.every(piece => piece.problems.length === 0 && statusOfPiece(piece) === 'planned')).toBe(true);

  const [first, second] = pieces;
  const type = (row: number, cells: Readonly<Record<string, number>>) =>
    sample.write(
      Object.entries(cells).map(([role, value]) => ({
        kind: 'values' as const,
        at: {
          sheet: 'Pieces',
          address: addressOf({ row: row - 1, column: table.columns[role as PieceRole]!, rows: 1, columns: 1 }),
        },
        values: [[value]],
      })),
    );
  const readings = (end: 'A' | 'B', value: Decimal) =>
    Object.fromEntries([1, 2, 3, 4].map(nth => [`reading${nth}${end}`, value.toNumber()]));
  const target = (piece: typeof first, index: 0 | 1) => piece!.ends[index].target!.value;
  const tolerance = first!.ends[1].tolerance!.value;
  await type(first!.row, { ...readings('A', target(first, 0)), ...readings('B', target(first, 1).plus(tolerance)) });
  await type(first!.row, { finished: first!.longest!.value.plus('0.5').toNumber() });
  await type(second!.row, readings('A', target(second, 0).minus(tolerance.times(2))));
  await type(second!.row, { finished: second!.overall!.value.toNumber() });
  const [one, two, three] = (await readPieces(port))!.pieces;
  // A mean on the limit is in spec; half a millimetre beyond the longest is not.
  expect([one!.ends[0].verdict, one!.ends[1].verdict, one!.lengthVerdict]).toEqual(['IN SPEC', 'IN SPEC', 'LONG']);
  expect([two!.ends[0].verdict, two!.ends[1].verdict, two!.lengthVerdict]).toEqual(['TIGHT', '', 'IN SPEC']);
  expect([three!.ends[0].verdict, three!.lengthVerdict]).toEqual(['', '']);
  expect(rejections(two!)).toEqual(['end A TIGHT']);
});
