import { partKey } from '../../core/catalogue/partName';
import { momentNumber } from '../../core/units/sheetDate';
import { nameOfCell } from '../../cells/sheetCell';
import type { RangeContent, Workbook } from '../../workbook/workbook';
import { columnDateOrders } from '../table/columnDateOrders';
import { findTables } from '../table/findTables';
import { plainHeading } from '../table/heading';
import { SheetCells } from '../table/sheetCells';
import { columnsByRole, type RoleList } from '../table/tableColumns';

/** A day on which a machine's calibration was changed. */
export interface MachineChange {
  /** "" where the log names none. */
  readonly machine: string;
  /** Day as the sheet's number, with its time where the log has one. */
  readonly moment: number;
  /** Row of the log as its sheet shows it. */
  readonly row: number;
  readonly sheet: string;
}

type LogRole = 'date' | 'machine' | 'kind' | 'what';
const ROLES: RoleList<LogRole> = [
  ['kind', 'kind'],
  ['date', 'date'],
  ['machine', 'machine', 'crimper'],
  ['what', 'task'],
];

/** Sheets on which people log what was done to a machine. */
const LOGS = /\blog\b|logbook|calibrat|maintenance|service/i;
const CHANGES =
  /re-?calibrat|\bcalibrat(?:ed|ion)\b|\badjust(?:ed|ment)\b|\brepair|\boverhaul|screw (?:was )?turned|turned (?:the )?(?:calibration )?screw/i;
/** `Calibration check` changes nothing. */
const ONLY_CHECKED = /^(?!.*(?:re-?calibrat|calibrated|adjusted|turned|repair)).*\bcheck/i;
/** Care that says so of a gauge or a caliper changes no machine. */
const OF_GAUGES = /gauge|caliper|calliper/i;

/** Column of a heading of ours that no other table has: the turns of the screw. */
const turnsColumn = (headings: readonly string[]) => headings.findIndex(heading => /^turns\b/.test(plainHeading(heading)));

/** The changes that a log holds: rows that say so, and checks after which the calibration screw was turned. */
export function machineChangesOf(content: RangeContent): MachineChange[] {
  const cells = new SheetCells(content);
  return findTables(cells).flatMap(table => {
    const { headings, block, below } = table;
    const { date, machine, kind, what } = columnsByRole({ headings, block }, ROLES);
    const turns = turnsColumn(headings);
    if (date === undefined || (kind === undefined && what === undefined && turns < 0)) return [];
    const rows = Array.from({ length: block.rows - 1 }, (_, i) => block.row + 1 + i).concat(below);
    const orders = columnDateOrders(cells, table, date);
    const text = (row: number, column: number | undefined) => (column === undefined ? '' : nameOfCell(cells.shown(row, column)));
    return rows.flatMap((row): MachineChange[] => {
      const day = cells.shown(row, date);
      const moment = typeof day === 'object' || typeof day === 'boolean' || day === '' ? undefined : momentNumber(day, orders);
      if (moment === undefined) return [];
      const turned = turns < 0 ? '' : cells.value(row, block.column + turns);
      const said = `${text(row, kind)} ${text(row, what)}`;
      const isChange =
        (typeof turned === 'number' && turned !== 0) || (CHANGES.test(said) && !ONLY_CHECKED.test(said) && !OF_GAUGES.test(said));
      return isChange ? [{ machine: text(row, machine), moment, row: row + 1, sheet: content.sheet }] : [];
    });
  });
}

/** Reads the changes of all machines that the workbook's logs hold. */
export async function readMachineChanges(workbook: Workbook): Promise<readonly MachineChange[]> {
  const logs = (await workbook.sheets()).filter(sheet => LOGS.test(sheet));
  const contents = await Promise.all(logs.map(sheet => workbook.used(sheet)));
  return contents.flatMap(content => (content ? machineChangesOf(content) : []));
}

/**
 * The last change of one machine; crimps that name no machine go with a log of one machine.
 * @param machine as the crimps name it; "" where they name none
 */
export function lastChange(changes: readonly MachineChange[], machine: string): MachineChange | undefined {
  const logged = new Set(changes.map(change => partKey(change.machine)).filter(Boolean));
  const isOfIt = (change: MachineChange) =>
    machine === '' || change.machine === '' ? logged.size <= 1 : partKey(change.machine) === partKey(machine);
  return changes
    .filter(isOfIt)
    .reduce<MachineChange | undefined>((last, change) => (last && last.moment >= change.moment ? last : change), undefined);
}
