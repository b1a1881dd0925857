import { dieFor } from './dies';
import { ferruleName, insertionMm, sampleFittings, type SampleFitting } from './fittings';
import { sampleHoses, type SampleHose } from './hoses';
import { NEVER_CRIMP, toStep, type SampleTable } from './sampleTable';
import type { Size } from './sizes';

/** Invented: allowed deviation of the crimp diameter either way, in mm. */
const toleranceMm: Readonly<Record<Size, number>> = {
  6: 0.12,
  8: 0.12,
  10: 0.15,
  12: 0.12,
  16: 0.15,
  19: 0.15,
  25: 0.15,
  31: 0.2,
  38: 0.2,
  51: 0.25,
};

/** Invented: what an end form adds to the crimp diameter of its hose, in mm, and to the dial, in digits. */
function ofEndForm({ form, angle }: SampleFitting): { diameter: number; digits: number } {
  if (form.endForm === 'O-ring face seal') return { diameter: 0.05, digits: -3 };
  if (form.endForm === '37° flare swivel') return { diameter: -0.05, digits: 3 };
  return { diameter: 0, digits: angle === 0 ? 0 : 1 };
}

/** Invented: dial of the gate machine in digits. */
const dialFor = (crimpMm: number) => Math.round(300 + 4.1 * crimpMm);

function row(hose: SampleHose, fitting: SampleFitting) {
  const { size, family } = hose;
  const added = ofEndForm(fitting);
  const crimpMm = toStep(hose.crimpMm + added.diameter, 0.05);
  const depth = insertionMm(size);
  const skived = family === 'Rowan' && size >= 31;
  return [
    hose.name,
    fitting.name,
    ferruleName(family, size),
    dieFor(crimpMm).name,
    dialFor(hose.crimpMm) + added.digits,
    crimpMm,
    toleranceMm[size],
    size <= 19 ? 0.25 : 0.3,
    depth + 4,
    skived ? depth + 2 : 0,
    skived ? 12 : 0,
    depth,
    NEVER_CRIMP,
  ];
}

/** One row for every hose with every coupling of its family and size. */
export const crimpsTable: SampleTable = {
  name: 'Crimps',
  headings: [
    'Hose',
    'Fitting',
    'Ferrule',
    'Die',
    'Dial',
    'Crimp diameter (mm)',
    'Tolerance (mm)',
    'Largest spread (mm)',
    'Crimp length (mm)',
    'Skive outside (mm)',
    'Skive inside (mm)',
    'Insertion depth (mm)',
    'Note',
  ],
  rows: sampleHoses.flatMap(hose =>
    sampleFittings.filter(({ family, size }) => family === hose.family && size === hose.size).map(fitting => row(hose, fitting)),
  ),
};
