import { TradeError } from '../../core/tradeError';
import type { Workbook } from '../../workbook/workbook';
import { workbookCatalogue } from '../catalogue/workbookCatalogue';
import type { DialProposal } from './dialProposal';
import { dialRegister, type DialPlan } from './dialRegister';
import { registerStand } from './registerStand';

/**
 * Reads the workbook and plans what writes a dial into the register.
 * @param now ISO date, with the time of day where that is known
 */
export async function planDial(workbook: Workbook, proposal: DialProposal, now: string): Promise<DialPlan> {
  const standing = await workbookCatalogue(workbook);
  const stand = standing?.canBeFollowed ? await registerStand(workbook, standing, now.slice(0, 10)) : undefined;
  try {
    return dialRegister({ standing, stand, now }, proposal);
  } catch (error) {
    if (error instanceof TradeError) return { kind: 'refused', sentence: error.message };
    throw error;
  }
}
