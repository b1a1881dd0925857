import { TradeError } from '../../core/tradeError';
import type { Workbook } from '../../host/workbook';
import { standingCatalogue } from '../catalogue/standingCatalogue';
import type { DialProposal } from './dialProposal';
import { dialRegister, type DialPlan } from './dialRegister';

/** Reads the workbook and plans what writes a dial into the register. */
export async function planDial(workbook: Workbook, proposal: DialProposal, today: string): Promise<DialPlan> {
  const standing = await standingCatalogue(workbook);
  const table = standing?.tables.find(each => each.table === 'machines');
  const sheet = table && (await workbook.used(table.at.sheet));
  try {
    return dialRegister({ standing, sheet, today }, proposal);
  } catch (error) {
    if (error instanceof TradeError) return { kind: 'refused', sentence: error.message };
    throw error;
  }
}
