import { GATE_STEP } from './gateStep';
import type { SampleTable } from './sampleTable';

/** A die set, named by the diameter it closes to; all invented. */
export interface SampleDie {
  readonly name: string;
  readonly closedMm: number;
  readonly largestMm: number;
  readonly lengthMm: number;
}

const lines: readonly (readonly [closedMm: number, largestMm: number, lengthMm: number])[] = [
  [14, 18.4, 45],
  [18, 22.5, 50],
  [22, 27.1, 55],
  [26, 31.4, 60],
  [30, 36, 65],
  [35, 40.8, 75],
  [39, 45.6, 80],
  [44, 51.4, 90],
  [50, 58.2, 95],
  [57, 65.4, 105],
  [64, 73.6, 115],
];

const sampleDies: readonly SampleDie[] = lines.map(([closedMm, largestMm, lengthMm]) => ({
  name: `D${closedMm}`,
  closedMm,
  largestMm,
  lengthMm,
}));

/** The smallest die set that opens far enough for a crimp diameter. */
export function dieFor(crimpMm: number): SampleDie {
  const die = sampleDies.find(({ closedMm, largestMm }) => closedMm <= crimpMm && crimpMm <= largestMm);
  if (!die) throw new Error(`no die for ${crimpMm} mm`);
  return die;
}

/** Dial of the gate machine at which each of its dies is as far open as it may be; invented. */
const OPEN_DIAL = 150;

/** Invented: dial of the gate machine for a crimp diameter in its die; one digit more closes the die by the machine's step. */
export function gateDial(crimpMm: number): number {
  return Math.round(OPEN_DIAL + (dieFor(crimpMm).largestMm - crimpMm) / GATE_STEP);
}

export const diesTable: SampleTable = {
  name: 'Dies',
  headings: ['Die', 'Smallest (mm)', 'Largest (mm)', 'Length (mm)', 'Checked', 'Note'],
  rows: sampleDies.map(({ name, closedMm, largestMm, lengthMm }) => [
    name,
    closedMm,
    largestMm,
    lengthMm,
    '2026-08-31',
    'invented',
  ]),
};
