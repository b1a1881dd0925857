import { TradeError } from '../../core/tradeError';
import type { Workbook } from '../../workbook/workbook';
import { workbookCatalogue } from '../catalogue/workbookCatalogue';
import type { DialProposal } from './dialProposal';
import { dialRegister, type DialPlan } from './dialRegister';
import { registerStand } from './registerStand';

/** Reads the workbook and plans what writes a dial into the register. */
export async function planDial(workbook: Workbook, proposal: DialProposal, today: string): Promise<DialPlan> {
  const standing = await workbookCatalogue(workbook);
  const stand = standing?.canBeFollowed ? await registerStand(workbook, standing, today) : undefined;
  try {
    return dialRegister({ standing, stand, today }, proposal);
  } catch (error) {
    if (error instanceof TradeError) return { kind: 'refused', sentence: error.message };
    throw error;
  }
}
