import { assembly } from './assembly';
import { calibrationTurns, conformity, crimpCheck, crimpDetail } from './crimps';
import { crimpSetup } from './crimpSetup';
import { boreSize, velocity } from './flow';
import { lengthLimits } from './lengthLimits';
import { cutLength, lengthChange, overallLength, routeLength } from './lengths';
import type { NativeFunction } from './nativeFunction';
import { nextDial } from './nextDial';
import { fittingData, hoseData } from './partData';
import { sellPrice } from './sellPrice';
import { unitCost } from './unitCost';

/** The functions of ours that can be said in functions that every spreadsheet program has. */
export const NATIVE_FUNCTIONS: Readonly<Record<string, NativeFunction>> = {
  ASSEMBLY: assembly,
  BORESIZE: boreSize,
  CALIBRATIONTURNS: calibrationTurns,
  CONFORMITY: conformity,
  CRIMPCHECK: crimpCheck,
  CRIMPDETAIL: crimpDetail,
  CRIMPSETUP: crimpSetup,
  CUTLENGTH: cutLength,
  FITTINGDATA: fittingData,
  HOSEDATA: hoseData,
  LENGTHCHANGE: lengthChange,
  LENGTHLIMITS: lengthLimits,
  NEXTDIAL: nextDial,
  OVERALLLENGTH: overallLength,
  ROUTELENGTH: routeLength,
  SELLPRICE: sellPrice,
  UNITCOST: unitCost,
  VELOCITY: velocity,
};
