import { lengthUnitOf } from '../../core/units/lengthUnit';
import type { Workbook } from '../../workbook/workbook';
import type { CutSettings } from '../cutlist/cutSettings';
import type { PlanProgress } from '../cutlist/planHoses';
import type { PlanSolver } from '../cutlist/planSolver';
import { cutListsOf } from '../cutlist/readCutList';
import { readRack } from '../rack/rack';
import { rackIn, type RackRow } from '../rack/rackRow';
import { freeSheetName } from '../print/freeSheetName';
import { guardPrice } from '../catalogue/guardPrice';
import { NothingToQuote } from '../catalogue/nothingToQuote';
import { quoteLines, type QuoteLines, type QuoteLineWishes } from '../jobs/quoteLine';
import { reelsOfLists } from './purchaseLists';
import { purchaseNeeds, type HoseNeed } from './purchaseNeeds';
import { planReels, type ReelsWanted } from './purchasePlan';
import { purchaseSheet } from './purchaseSheet';
import type { HoseBy } from './purchaseItems';
import { usableCatalogue, type UsableCatalogue } from '../catalogue/usableCatalogue';
import { PLAIN_MONEY } from '../catalogue/currencyFormat';
import { priceFormat } from '../catalogue/priceFormat';
import { rateNumber } from '../catalogue/rateNumber';

/** How the reels are counted: by length and scrap, or by a cut plan with these settings. */
export interface PurchasePlanning {
  readonly settings: CutSettings;
  /** Sheet with stock that is used first; undefined = new reels only. */
  readonly rackSheet: string | undefined;
  readonly solve: PlanSolver;
  readonly onProgress: (progress: PlanProgress) => void;
  readonly signal: { readonly aborted: boolean };
}

/** A purchase list that was written. */
export interface WrittenPurchase {
  readonly sheet: string;
  readonly read: QuoteLines;
}

async function rackRows(workbook: Workbook, { rackSheet, settings }: PurchasePlanning): Promise<readonly RackRow[]> {
  if (rackSheet === undefined) return [];
  const rack = await readRack(workbook, rackSheet);
  if (!rack) throw new NothingToQuote(`Sheet ${rackSheet} has no table with the columns Hose and Length.`);
  return rackIn(rack.rows, settings.unit);
}

async function plannedReels(
  workbook: Workbook,
  { catalogue }: UsableCatalogue,
  hoses: readonly HoseNeed[],
  planning: PurchasePlanning,
  today: string,
): Promise<readonly ReelsWanted[]> {
  const input = { settings: planning.settings, rack: await rackRows(workbook, planning), today };
  return planReels(catalogue, hoses, input, planning.solve, planning.onProgress, planning.signal);
}

async function listedReels(
  workbook: Workbook,
  { catalogue }: UsableCatalogue,
  jobSheet: string,
  hoses: readonly HoseNeed[],
): Promise<readonly ReelsWanted[]> {
  const unit = lengthUnitOf(catalogue.units.length);
  const lists = await cutListsOf(workbook, unit, jobSheet);
  if (lists.length === 0)
    throw new NothingToQuote(`No cut list of this workbook was made from sheet ${jobSheet}: write one under Week › Cut list.`);
  return hoses.map(need => reelsOfLists(need, lists, catalogue.units.length, unit));
}

/** What is on a cut list has not been bought for yet; what is done needs nothing any more. */
export const purchaseWishes = (wishes: QuoteLineWishes): QuoteLineWishes => ({
  ...wishes,
  take: new Set([...(wishes.take ?? []), 'planned']),
});

/**
 * Writes what the selected job lines need as a new sheet, in one batch. Lines that must not be made, and lines that are done, need nothing.
 * @param planning undefined = hose by length and scrap; `list` = from the cut lists of the workbook, by length where none has all pieces
 * @param today as `2026-10-05`
 * @param wishes which lines are wanted; those that are planned are so anyway, for a cut list buys nothing
 * @param hoseBy in whole reels, or by the metre (foot)
 */
export async function writePurchase(
  workbook: Workbook,
  planning: PurchasePlanning | 'list' | undefined,
  today: string,
  wishes: QuoteLineWishes = {},
  hoseBy: HoseBy = 'reel',
): Promise<WrittenPurchase> {
  const found = await usableCatalogue(workbook);
  const { catalogue } = found;
  const unit = catalogue.units.length.symbol;
  const plan = planning === 'list' ? undefined : planning;
  if (plan && plan.settings.unit !== unit) {
    throw new NothingToQuote(`The catalogue is in ${unit}: set the unit of the cut plan to ${unit}, or take lengths plus scrap.`);
  }
  const read = await quoteLines(workbook, catalogue.units.length, purchaseWishes(wishes));
  const needs = purchaseNeeds(catalogue, read.lines, (guard, hose) => guardPrice(found, guard, hose));
  const reels =
    planning === 'list'
      ? await listedReels(workbook, found, read.sheet, needs.hoses)
      : plan && (await plannedReels(workbook, found, needs.hoses, plan, today));
  const sheet = freeSheetName('Purchase list', await workbook.sheets(), today);
  await workbook.write(
    purchaseSheet({
      sheet,
      source: `sheet ${read.sheet}, ${read.lines.length} lines, ${today}`,
      needs,
      stops: read.stops,
      reels,
      hoseBy,
      units: catalogue.units,
      catalogue: found.reference,
      scrap: rateNumber(found, 'scrap fraction'),
      format: (await priceFormat(workbook)) ?? PLAIN_MONEY,
    }),
  );
  return { sheet, read };
}
