import type { Catalogue } from '../../core/catalogue/catalogue';
import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { Workbook } from '../../workbook/workbook';
import { usualStep } from '../table/benchStep';
import { pickedRows } from '../table/pickedRows';
import type { BenchCard } from './benchCard';
import { cardTable } from './cardHeadings';
import { catalogueLookUp } from './catalogueLookUp';
import { workbookCatalogue } from '../catalogue/workbookCatalogue';
import { cardUnit, readCards } from './readCards';

/** Cards of the selected lines and where their data come from. */
export interface GatheredCards {
  readonly cards: readonly BenchCard[];
  /** Sheet, and the handle of the catalogue where one is loaded. */
  readonly source: string;
}

/** What the user says about the reading of cards. */
export interface CardWishes {
  /** Unit where the sheet's headings name none. */
  readonly unit: LengthUnit;
  /** What the bench can cut. */
  readonly step: Decimal;
  readonly pressureUnit: string;
  /** Machine whose own recorded dials win; "" = none. */
  readonly machine: string;
}

/**
 * Reads the selected job lines as bench cards, with the set-ups of the workbook's catalogue where there is one.
 * @throws Error with a sentence for the user where the selection is in no job table
 */
export async function gatherCards(workbook: Workbook, wishes: CardWishes): Promise<GatheredCards> {
  const picked = await pickedRows(workbook);
  const table = cardTable(picked.content, picked.near) ?? cardTable(picked.content);
  if (!table) {
    throw new Error(
      `Sheet ${picked.sheet} has no table with the columns Hose and Cut length above the selected cell. Select your job lines, or one cell of the job table.`,
    );
  }
  const catalogue: Catalogue | undefined = (await workbookCatalogue(workbook))?.catalogue;
  const unit = cardUnit(table) ?? wishes.unit;
  const step = unit === wishes.unit ? wishes.step : usualStep(unit);
  const lookUp = catalogue && catalogueLookUp(catalogue, wishes.machine.trim() || undefined);
  const cards = readCards(table, { unit, step, pressureUnit: wishes.pressureUnit, lookUp }, picked.rows);
  return { cards, source: [`sheet ${picked.sheet}`, catalogue?.handle].filter(Boolean).join(', ') };
}
