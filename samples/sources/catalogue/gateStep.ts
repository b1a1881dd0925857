/** Change of diameter in mm per digit of the machine at the gate; invented. */
export const GATE_STEP = 0.016;
