import { assembly, crimpSetup, trialDial, unitCost } from './assembly';
import { catalogue } from './catalogue';
import { crimpCause } from './causes';
import { calibrationTurns, conformity, crimpCheck, crimpDetail, nextDial } from './crimp';
import { cutPlan } from './cutplan';
import { gaugeCheck, gaugeStudy } from './gauges';
import { boreSize, pressureDrop, velocity, viscosity } from './hydraulics';
import { cutLength, lengthChange, lengthLimits, overallLength, routeLength } from './length';
import { findFitting, findHose, fittingData, hoseData } from './parts';
import { sellPrice } from './price';
import { capability, controlLimits, dialResponse, runSignals } from './quality';
import { findThread } from './threads';

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
  TRIALDIAL: trialDial,
  ASSEMBLY: assembly,
  FINDHOSE: findHose,
  FINDFITTING: findFitting,
  FINDTHREAD: findThread,
  UNITCOST: unitCost,
  CUTPLAN: cutPlan,
  CRIMPCAUSE: crimpCause,
  DIALRESPONSE: dialResponse,
  CONTROLLIMITS: controlLimits,
  RUNSIGNALS: runSignals,
  CAPABILITY: capability,
  GAUGESTUDY: gaugeStudy,
  GAUGECHECK: gaugeCheck,
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
