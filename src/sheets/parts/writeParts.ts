import { breathe, Stopped, type Watch } from '../../workbook/watch';
import { reasonOfRefusal } from '../../workbook/refusedWriting';
import type { Change, Workbook } from '../../workbook/workbook';
import type { PartsPlan } from './planParts';
import type { TablePlan } from './tablePlan';
import { requestPieces } from './requestPieces';
import { restoreCatalogue } from './restoreCatalogue';

/** The catalogue was not written; the sentence says why and what stands in the workbook. */
class NotWritten extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'NotWritten';
  }
}

/** A part of the plan, with the table that it begins to write. */
interface Step {
  readonly changes: readonly Change[];
  readonly table?: TablePlan;
}

function stepsOf({ copies, tables, finish }: PartsPlan): readonly Step[] {
  const newSheetsFirst = [...tables].sort((a, b) => Number(b.isNew) - Number(a.isNew));
  return [
    ...copies.map(({ changes }) => ({ changes })),
    ...newSheetsFirst.filter(({ changes }) => changes.length > 0).map(table => ({ changes: table.changes, table })),
    { changes: finish },
  ];
}

/**
 * Writes a plan: all in one batch where one request can carry it; else in pieces, the copies first, then the tables, the Catalogue cell
 * last. Where a piece fails or the user stops, what was written is taken back.
 * @throws NotWritten with what stands in the workbook then
 */
export async function writeParts(workbook: Workbook, plan: PartsPlan, watch: Watch = {}, most?: number): Promise<void> {
  const steps = stepsOf(plan);
  const whole = requestPieces(
    steps.flatMap(({ changes }) => changes),
    most,
  );
  const begun: TablePlan[] = [];
  try {
    await breathe(watch, 0);
    if (whole.length <= 1) {
      begun.push(...plan.tables.filter(({ changes }) => changes.length > 0));
      await workbook.write(whole[0]?.changes ?? []);
      return;
    }
    const total = whole.reduce((sum, { bytes }) => sum + bytes, 0);
    let done = 0;
    for (const { changes, table } of steps) {
      if (table) begun.push(table);
      for (const piece of requestPieces(changes, most)) {
        await workbook.write(piece.changes);
        done += piece.bytes;
        // Once all of it is written there is nothing to stop.
        await breathe(done < total ? watch : {}, done / total);
      }
    }
  } catch (error) {
    const why = error instanceof Stopped ? 'Stopped.' : reasonOfRefusal(error);
    throw new NotWritten(`${why} ${await restoreCatalogue(workbook, plan, begun)}`);
  }
}
