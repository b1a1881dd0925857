import type { FLOW_UNIT_WORDS as FlowUnitWords } from './flowUnitWords';

/** Stands for flowUnitWords in the bundle of the worksheet functions, none of which reads such a unit. */
export const FLOW_UNIT_WORDS: typeof FlowUnitWords = { volume: [], flow: [], velocity: [], viscosity: [] };
