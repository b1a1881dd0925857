import type { Catalogue } from '../../core/catalogue/catalogue';
import { crimpFor } from '../../core/catalogue/crimpFor';
import { isHandle } from '../../core/catalogue/handleText';
import { isFerrule } from '../../core/catalogue/partsMatch';
import { partKey } from '../../core/catalogue/partName';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { CONVERTED_PLACES } from '../../core/units/decimalPlaces';
import { convertMeasure, type MeasureUnit } from '../../core/units/measureUnit';
import type { RangeAddress, Workbook } from '../../workbook/workbook';
import { CHOSEN_CATALOGUE, workbookCatalogue, type WorkbookCatalogue } from './workbookCatalogue';
import { hostOf } from '../../workbook/shownWorkbook';
import { ratingDecimals } from './ratingDecimals';
import { machineRows, type MachineRows } from './machineRows';

/** What the workbook's catalogue is known to be. */
export interface CatalogueState {
  /** The workbook has a CATALOGUE cell. */
  readonly present: boolean;
  /** How formulas name that cell: `Catalogue`, else `Parts!$B$5`. */
  readonly reference?: string;
  /** Why it cannot be used, in words. */
  readonly trouble?: string;
  /** Unit of its lengths and of its crimp diameters: `mm`, `in`. */
  readonly unit?: string | undefined;
  readonly diameterUnit?: string | undefined;
  readonly pressureUnit?: string | undefined;
  /** With how many decimals its ratings are read; undefined: as they are. */
  readonly ratingDecimals?: number | undefined;
  readonly massUnit?: string | undefined;
  /** Undefined where the catalogue states no temperatures, or cannot be followed. */
  readonly temperatureUnit?: string | undefined;
  readonly isHose?: (name: string) => boolean;
  readonly isFitting?: (name: string) => boolean;
  readonly isMachine?: (name: string) => boolean;
  /** Largest spread of a pair in a unit, as it is written in a formula: "" where its crimp data state none, undefined without crimp data. */
  readonly largestSpread?: (hose: string, fitting: string, unit: MeasureUnit) => string | undefined;
  /** Where the table Machines describes the machines; undefined where it does not. */
  readonly machines?: MachineRows | undefined;
}

/** Why nothing can be looked up in it, in words; undefined where it can. */
export function catalogueHindrance({ present, trouble }: CatalogueState): string | undefined {
  if (present) return trouble;
  return 'No cell of this workbook holds =HOSE.CATALOGUE(…). Load the parts data under Parts › Load.';
}

const known = new WeakMap<Workbook, { readonly key: string; readonly at: RangeAddress; readonly state: CatalogueState }>();

function spreadOf(catalogue: Catalogue, hose: string, fitting: string, unit: MeasureUnit): string | undefined {
  if (hose === '' || fitting === '') return undefined;
  try {
    const { largestSpread } = crimpFor(catalogue, hose, fitting).crimp;
    if (largestSpread === undefined) return '';
    return convertMeasure(new Decimal(largestSpread), catalogue.units.diameter, unit)
      .toDecimalPlaces(CONVERTED_PLACES)
      .toString();
  } catch (error) {
    if (error instanceof TradeError) return undefined;
    throw error;
  }
}

async function stateOf(workbook: Workbook, found: WorkbookCatalogue): Promise<CatalogueState> {
  const { catalogue, reference, shown, reason } = found;
  // A formula that the pane cannot follow works all the same: its handle names the unit.
  if (!catalogue && isHandle(String(shown))) return { present: true, reference, unit: /\((mm|in)\b/.exec(String(shown))?.[1] };
  if (!catalogue) return { present: true, reference, trouble: `The catalogue cannot be read: ${reason}.` };
  const { index, units } = catalogue;
  return {
    present: true,
    reference,
    unit: units.length.symbol,
    diameterUnit: units.diameter.symbol,
    pressureUnit: units.pressure.symbol,
    ratingDecimals: ratingDecimals(catalogue),
    massUnit: units.mass?.symbol,
    temperatureUnit: units.temperature?.symbol,
    isHose: name => index.hoses.has(partKey(name)),
    isFitting: name => {
      const entry = index.fittings.get(partKey(name));
      return entry !== undefined && !(entry.row && isFerrule(entry.row));
    },
    isMachine: name => index.machines.has(partKey(name)),
    largestSpread: (hose, fitting, unit) => spreadOf(catalogue, hose, fitting, unit),
    machines: await machineRows(workbook),
  };
}

/** What a Catalogue cell says, where its tables stand and that it is the one that counts: as long as that is the same, so is the catalogue. */
async function keyOf(workbook: Workbook, at: RangeAddress): Promise<string | undefined> {
  const [content] = await workbook.read([at]).catch(() => []);
  const shown = String(content?.values[0]?.[0] ?? '');
  return isHandle(shown) ? [shown, content!.formulas[0]![0], await workbook.recall(CHOSEN_CATALOGUE)].join(' ') : undefined;
}

/** The workbook's catalogue as its cell has it now; the tables are read again only when that cell has changed. */
export async function catalogueState(workbook: Workbook): Promise<CatalogueState> {
  const before = known.get(hostOf(workbook));
  if (before && (await keyOf(workbook, before.at)) === before.key) return before.state;
  const found = await workbookCatalogue(workbook);
  if (!found) return { present: false };
  const { shown, cell, reference } = found;
  if (typeof shown === 'object') {
    const trouble = `The Catalogue cell shows ${shown.error}${shown.sentence ? `: ${shown.sentence}` : ''}.`;
    return { present: true, reference, trouble };
  }
  const state = await stateOf(workbook, found);
  const key = await keyOf(workbook, cell);
  if (key !== undefined) known.set(hostOf(workbook), { key, at: cell, state });
  return state;
}
