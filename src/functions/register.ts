import { calibrationTurns, conformity, crimpCheck, crimpDetail, nextDial } from './crimp';
import { cutPlan } from './cutplan';
import { cutLength, lengthChange, lengthLimits, overallLength, routeLength } from './length';

/** Every worksheet function by its id. Ids are stored in people's files and never change. */
export const worksheetFunctions = {
  CUTLENGTH: cutLength,
  OVERALLLENGTH: overallLength,
  LENGTHLIMITS: lengthLimits,
  LENGTHCHANGE: lengthChange,
  ROUTELENGTH: routeLength,
  CRIMPCHECK: crimpCheck,
  CRIMPDETAIL: crimpDetail,
  CONFORMITY: conformity,
  NEXTDIAL: nextDial,
  CALIBRATIONTURNS: calibrationTurns,
  CUTPLAN: cutPlan,
} as const;

for (const [id, worksheetFunction] of Object.entries(worksheetFunctions)) {
  CustomFunctions.associate(id, worksheetFunction as (...args: unknown[]) => unknown);
}

// The task pane re-evaluates a cell's formula to show its sentence; it must not import the functions, so it finds them here.
(globalThis as { benchrowFunctions?: unknown }).benchrowFunctions = worksheetFunctions;
