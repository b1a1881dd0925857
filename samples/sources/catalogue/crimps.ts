import { dieFor, gateDial } from './dies';
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

/** Invented: what an end form adds to the crimp diameter of its hose, in mm. */
function ofEndForm({ form }: SampleFitting): number {
  if (form.endForm === 'O-ring face seal') return 0.05;
  return form.endForm === '37° flare swivel' ? -0.05 : 0;
}

/** A row for a coupling, or for all couplings that a pattern names; those crimp like `like`. */
function row(hose: SampleHose, like: SampleFitting, named = like.name) {
  const { size, family } = hose;
  const crimpMm = toStep(hose.crimpMm + ofEndForm(like), 0.05);
  const depth = insertionMm(size);
  const skived = family === 'Rowan' && size >= 31;
  return [
    hose.name,
    named,
    ferruleName(family, size),
    dieFor(crimpMm).name,
    gateDial(crimpMm),
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

/** End forms whose couplings crimp alike, so that one row with a pattern covers them; some are covered by it alone. */
const COVERED_BY_PATTERN: readonly string[] = ['24° cone', 'split flange', 'O-ring face seal', '37° flare swivel'];
const byPatternAlone = ({ form, angle, size }: SampleFitting) => form.endForm === '24° cone' && angle === 45 && size >= 19;

function rowsOf(hose: SampleHose) {
  const own = sampleFittings.filter(({ family, size }) => family === hose.family && size === hose.size);
  const exact = own.filter(fitting => !byPatternAlone(fitting)).map(fitting => row(hose, fitting));
  const patterns = COVERED_BY_PATTERN.flatMap(endForm => {
    const straight = own.find(({ form, angle }) => form.endForm === endForm && angle === 0);
    return straight ? [row(hose, straight, `${hose.family} ${endForm}*`)] : [];
  });
  return [...exact, ...patterns];
}

/** A row for a hose with each coupling of its family and size, or with a pattern that names several. */
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
  rows: sampleHoses.flatMap(rowsOf),
};
