import { assembly, crimpSetup, unitCost } from './assembly';
import { catalogue } from './catalogue';
import { crimpCause } from './causes';
import { calibrationTurns, conformity, crimpCheck, crimpDetail, nextDial } from './crimp';
import { cutPlan } from './cutplan';
import { boreSize, pressureDrop, velocity, viscosity } from './hydraulics';
import { cutLength, lengthChange, lengthLimits, overallLength, routeLength } from './length';
import { findFitting, findHose, fittingData, hoseData } from './parts';
import { sellPrice } from './price';
import { capability, controlLimits, dialResponse, gaugeStudy, runSignals } from './quality';

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
  CATALOGUE: catalogue,
  HOSEDATA: hoseData,
  FITTINGDATA: fittingData,
  CRIMPSETUP: crimpSetup,
  ASSEMBLY: assembly,
  FINDHOSE: findHose,
  FINDFITTING: findFitting,
  UNITCOST: unitCost,
  CUTPLAN: cutPlan,
  CRIMPCAUSE: crimpCause,
  DIALRESPONSE: dialResponse,
  CONTROLLIMITS: controlLimits,
  RUNSIGNALS: runSignals,
  CAPABILITY: capability,
  GAUGESTUDY: gaugeStudy,
  SELLPRICE: sellPrice,
  VELOCITY: velocity,
  BORESIZE: boreSize,
  PRESSUREDROP: pressureDrop,
  VISCOSITY: viscosity,
} as const;

for (const [id, worksheetFunction] of Object.entries(worksheetFunctions)) {
  CustomFunctions.associate(id, worksheetFunction as (...args: unknown[]) => unknown);
}

// The task pane re-evaluates a cell's formula to show its sentence; it must not import the functions, so it finds them here.
(globalThis as { benchrowFunctions?: unknown }).benchrowFunctions = worksheetFunctions;
