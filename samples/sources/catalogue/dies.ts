import type { SampleTable } from './sampleTable';

/** A die set, named by the diameter it closes to; all invented. */
export interface SampleDie {
  readonly name: string;
  readonly closedMm: number;
  readonly largestMm: number;
  readonly lengthMm: number;
}

const lines: readonly (readonly [closedMm: number, largestMm: number, lengthMm: number])[] = [
  [15, 19.4, 45],
  [19, 23.5, 55],
  [23, 28, 55],
  [27, 32.5, 60],
  [31, 36.9, 70],
  [36, 41.5, 75],
  [40, 46, 85],
  [45, 52, 90],
  [51, 58.5, 100],
  [58, 66, 110],
  [65, 74, 110],
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

export const diesTable: SampleTable = {
  name: 'Dies',
  headings: ['Die', 'Smallest (mm)', 'Largest (mm)', 'Length (mm)', 'Checked'],
  rows: sampleDies.map(({ name, closedMm, largestMm, lengthMm }) => [name, closedMm, largestMm, lengthMm, '2026-08-31']),
};
