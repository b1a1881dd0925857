import { isHandle } from '../../core/catalogue/handleText';
import { isFerrule } from '../../core/catalogue/partsMatch';
import { partKey } from '../../core/catalogue/partName';
import type { Workbook } from '../../workbook/workbook';
import { catalogueOfWorkbook } from './catalogueOfWorkbook';
import { hostOf } from '../../workbook/shownWorkbook';
import { machineRows, type MachineRows } from './machineRows';

/** What the workbook's catalogue is known to be. */
export interface CatalogueState {
  /** The workbook has a name `Catalogue`. */
  readonly present: boolean;
  /** Why it cannot be used, in words. */
  readonly trouble?: string;
  /** Unit of its lengths and of its crimp diameters: `mm`, `in`. */
  readonly unit?: string | undefined;
  readonly diameterUnit?: string | undefined;
  readonly pressureUnit?: string | undefined;
  readonly massUnit?: string | undefined;
  readonly isHose?: (name: string) => boolean;
  readonly isFitting?: (name: string) => boolean;
  /** Where the table Machines describes the machines; undefined where it does not. */
  readonly machines?: MachineRows | undefined;
  /** The rate `minimum charge`, where there is one. */
  readonly minimumCharge?: string | undefined;
}

/** Why nothing can be looked up in it, in words; undefined where it can. */
export function catalogueHindrance({ present, trouble }: CatalogueState): string | undefined {
  if (present) return trouble;
  return 'No cell of this workbook is named Catalogue and holds =HOSE.CATALOGUE(…). Load the parts data under Parts › Load.';
}

const known = new WeakMap<Workbook, { readonly key: string; readonly state: CatalogueState }>();

async function stateOf(workbook: Workbook, handle: string): Promise<CatalogueState> {
  const [catalogue, machines] = await Promise.all([catalogueOfWorkbook(workbook), machineRows(workbook)]);
  if (!catalogue) return { present: true, unit: /\((mm|in)\b/.exec(handle)?.[1] };
  const { index, units } = catalogue;
  return {
    present: true,
    unit: units.length.symbol,
    diameterUnit: units.diameter.symbol,
    pressureUnit: units.pressure.symbol,
    massUnit: units.mass?.symbol,
    isHose: name => index.hoses.has(partKey(name)),
    isFitting: name => {
      const entry = index.fittings.get(partKey(name));
      return entry !== undefined && !(entry.row && isFerrule(entry.row));
    },
    machines,
    minimumCharge: index.rates.get('minimumcharge')?.row?.value.toString(),
  };
}

/** The workbook's catalogue as its `Catalogue` cell stands; the tables are read again only when that cell has changed. */
export async function catalogueState(workbook: Workbook): Promise<CatalogueState> {
  const name = (await workbook.names()).find(each => each.name.toLowerCase() === 'catalogue');
  if (!name) return { present: false };
  const [content] = await workbook.read([name.at]);
  const value = content?.values[0]?.[0] ?? '';
  if (typeof value === 'object') {
    return { present: true, trouble: `The Catalogue cell shows ${value.error}${value.sentence ? `: ${value.sentence}` : ''}.` };
  }
  const cell = String(value);
  if (!isHandle(cell)) return { present: true, trouble: 'The cell named Catalogue holds no =HOSE.CATALOGUE(…).' };
  // The handle tells what the tables say, the formula where they stand.
  const key = `${cell} ${content?.formulas[0]?.[0] ?? ''}`;
  const before = known.get(hostOf(workbook));
  if (before?.key === key) return before.state;
  const state = await stateOf(workbook, cell);
  known.set(hostOf(workbook), { key, state });
  return state;
}
