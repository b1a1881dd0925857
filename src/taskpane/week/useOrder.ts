import { useCallback, useRef, useState } from 'react';
import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { measureUnit } from '../../core/units/measureUnit';
import { readJobs, type Jobs } from '../../sheets/jobs/readJobs';
import { jobChoice, type JobChoice } from '../../sheets/jobs/jobChoice';
import { readPieces } from '../../sheets/pieces/readPieces';
import { isTooOld } from '../../sheets/rack/hoseAge';
import { unusableHose } from '../../sheets/rack/unusableHose';
import { rackBefore } from '../../sheets/rack/newestRack';
import { rackSheets, readRack, type Rack } from '../../sheets/rack/rack';
import { today } from '../../sheets/table/today';
import type { Takeable } from '../../sheets/table/tableRows';
import { orderOfJobs, type MachineNow } from '../../sheets/week/orderOfJobs';
import type { OrderOfWork } from '../../sheets/week/orderOfWork';
import { pickList, type PickList } from '../../sheets/week/pickList';
import { rackReels } from '../../sheets/week/pickReels';
import type { Workbook } from '../../workbook/workbook';
import type { JobTicks } from '../controls/JobsNote';
import { useSettledView } from '../controls/useSettledView';

/** What is said about the machine and the bench. */
export interface OrderWishes extends MachineNow {
  readonly unit: LengthUnit;
  readonly step: Decimal;
  /** Hose older than this is not fetched; undefined: no limit. */
  readonly ageLimitMonths: number | undefined;
}

/** What somebody says about the reading of job lines and rack. */
export type OrderTicks = JobTicks & { readonly takeRack?: ReadonlySet<Takeable> };

/** The order of work and the pick list of the lines that are meant. */
export interface OrderRead {
  readonly status: 'ready';
  readonly jobs: Jobs;
  readonly order: OrderOfWork;
  readonly picks: PickList;
  /** Sheet of the rack that the reels are from. */
  readonly rack: string | undefined;
  /** What was read of it. */
  readonly stock: Rack | undefined;
}

async function readOrder(workbook: Workbook, wishes: OrderWishes, ticks: OrderTicks, choice: JobChoice): Promise<OrderRead> {
  const { takeRack, ...jobTicks } = ticks;
  const { unit, step, ageLimitMonths } = wishes;
  const jobs = await readJobs(workbook, { step: { value: step, unit: measureUnit('length', unit)! }, ...jobTicks }, choice);
  const [rack] = await rackSheets(workbook);
  const stock = rack === undefined ? undefined : await readRack(workbook, rack, takeRack, jobs);
  const order = orderOfJobs(jobs, wishes, unit);
  const tooOld = (stock?.rows ?? []).filter(row => isTooOld(row, ageLimitMonths, today()));
  const reels = rackReels(stock?.rows.filter(row => !tooOld.includes(row)) ?? [], unit);
  const pieces = (await readPieces(workbook))?.pieces;
  const cutFrom = await rackBefore(workbook);
  const before = cutFrom && pieces?.length ? await readRack(workbook, cutFrom.sheet, takeRack, jobs) : undefined;
  const unusableOf = stock && unusableHose(stock, tooOld);
  const picks = pickList(jobs, reels, unit, pieces, unusableOf, rackReels(before?.rows ?? [], unit));
  return { status: 'ready', jobs, order, picks, rack, stock };
}

/** Follows the selection and orders the lines that are meant. */
export function useOrder(workbook: Workbook, wishes: OrderWishes, ticks: OrderTicks) {
  const key = JSON.stringify([wishes, [...(ticks.take ?? [])], [...(ticks.takeRack ?? [])], ticks.plainEnds ?? false]);
  const [meant, setMeant] = useState({ key, wishes, ticks });
  if (meant.key !== key) setMeant({ key, wishes, ticks });
  const shown = useRef<{ readonly choice: JobChoice; readonly row: number }>();
  const read = useCallback(
    async (from: Workbook): Promise<OrderRead> => {
      const selected = await jobChoice(from);
      const held = shown.current;
      // A row that the view itself led to is no other choice.
      const isHeld = held?.choice.sheet === selected.sheet && selected.block.rows === 1 && selected.block.row === held.row - 1;
      if (!isHeld) shown.current = undefined;
      return readOrder(from, meant.wishes, meant.ticks, isHeld ? held.choice : selected);
    },
    [meant],
  );
  const { view, refresh } = useSettledView<OrderRead>(workbook, read);
  return {
    view,
    refresh,
    /** Leads to a row of the sheet; the lines that are meant stay. */
    show: (row: number) => {
      if (view.status !== 'ready') return;
      const { choice } = view.jobs;
      shown.current = { choice, row };
      void workbook.select({ sheet: choice.sheet, address: `A${row}` });
    },
  };
}
