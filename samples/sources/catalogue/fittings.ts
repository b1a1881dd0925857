import { cutOffMm, endForms, type EndForm, type EndFormName } from './endForms';
import type { Family } from './hoses';
import { toStep, type SampleTable } from './sampleTable';
import { bores, dn, type Size } from './sizes';

/** One coupling of a family. */
export interface SampleFitting {
  readonly name: string;
  readonly family: Family;
  readonly form: EndForm;
  readonly angle: 0 | 45 | 90;
  readonly size: Size;
}

/** What the workshop keeps in its racks: end form, angle, sizes. */
const stock: Readonly<Record<Family, readonly (readonly [form: EndFormName, angle: 0 | 45 | 90, from: Size, to: Size])[]>> = {
  Alder: [
    ['light', 0, 6, 38],
    ['light', 45, 10, 31],
    ['light', 90, 8, 31],
    ['flare', 0, 6, 25],
    ['cone60', 0, 6, 51],
    ['cone60', 90, 12, 25],
  ],
  Larch: [
    ['light', 0, 6, 25],
    ['light', 45, 12, 19],
    ['light', 90, 8, 19],
    ['heavy', 0, 6, 31],
    ['heavy', 90, 10, 25],
    ['flare', 0, 6, 19],
    ['flare', 90, 6, 19],
    ['faceSeal', 0, 10, 25],
    ['faceSeal', 90, 10, 19],
    ['cone60', 0, 6, 38],
  ],
  Rowan: [
    ['heavy', 0, 10, 31],
    ['heavy', 90, 12, 25],
    ['faceSeal', 0, 12, 25],
    ['flange', 0, 19, 38],
    ['flange', 45, 25, 38],
    ['flange', 90, 19, 38],
  ],
  Willow: [
    ['light', 0, 25, 38],
    ['cone60', 0, 25, 51],
    ['cone60', 90, 25, 38],
  ],
};

const ALL_SIZES = Object.keys(bores).map(Number) as Size[];
const ferruleSizes: Readonly<Record<Family, readonly [from: Size, to: Size]>> = {
  Alder: [6, 51],
  Larch: [6, 38],
  Rowan: [10, 38],
  Willow: [25, 51],
};
const angleWord = (angle: number) => (angle === 0 ? 'straight' : `${angle}°`);

function fittingsOf(family: Family): SampleFitting[] {
  return stock[family].flatMap(([formName, angle, from, to]) => {
    const form: EndForm = endForms[formName];
    return ALL_SIZES.filter(size => size >= from && size <= to && form.sizes[size]).map(size => ({
      name: [family, form.endForm, form.series, angleWord(angle), dn(size)].filter(Boolean).join(' '),
      family,
      form,
      angle,
      size,
    }));
  });
}

const FAMILIES = ['Alder', 'Larch', 'Rowan', 'Willow'] as const;

/** Every coupling of the workshop, without the ferrules. */
export const sampleFittings: readonly SampleFitting[] = FAMILIES.flatMap(fittingsOf);

/** Name of the ferrule that a coupling of the family takes. */
export const ferruleName = (family: Family, size: Size) => `${family} ferrule ${dn(size)}`;

/** Invented: how deep the hose goes into the coupling, in mm. */
export const insertionMm = (size: Size) => Math.round(20 + 0.6 * bores[size].mm);

const RATING_NOT_KNOWN = 'Larch 37° flare swivel 90° DN 19';
const NOTE = 'thread and pressure from memory of the standard: check; cut-off, drop, depth, mass, price and pack invented';

function fittingRow({ name, family, form, angle, size }: SampleFitting) {
  const bore = bores[size].mm;
  const [thread, pressure] = form.sizes[size]!;
  const bent = angle === 0 ? 1 : angle === 45 ? 1.9 : 2.1;
  const mass = toStep((0.03 + 0.0011 * bore ** 1.9) * (0.75 + bent / 4), 0.001);
  const price = toStep((1.6 + 0.06 * bore ** 1.45) * bent * (form.endForm === 'split flange' ? 1.4 : 1), 0.05);
  const drop = angle === 0 ? undefined : toStep((angle / 90) * (14 + 1.5 * bore), 0.5);
  return [
    name,
    family,
    form.endForm,
    thread,
    form.series,
    angle,
    dn(size),
    bore,
    cutOffMm(form, size, angle),
    angle === 0 ? form.measuredTo : 'centreline',
    drop,
    insertionMm(size),
    name === RATING_NOT_KNOWN ? undefined : pressure,
    mass,
    price,
    size <= 19 ? 10 : 2,
    form.standard,
    name === RATING_NOT_KNOWN ? 'no pressure rating known: ask the maker' : NOTE,
  ];
}

function ferruleRow(family: Family, size: Size) {
  const bore = bores[size].mm;
  const [mass, price] = [toStep(0.02 + 0.0006 * bore ** 1.8, 0.001), toStep(0.5 + 0.02 * bore ** 1.4, 0.05)];
  const head = [ferruleName(family, size), family, 'ferrule', undefined, undefined, undefined, dn(size), bore, 0];
  return [...head, 'end', undefined, undefined, undefined, mass, price, 20, undefined, 'all values invented'];
}

const ferruleRows = FAMILIES.flatMap(family => {
  const [from, to] = ferruleSizes[family];
  return ALL_SIZES.filter(size => size >= from && size <= to).map(size => ferruleRow(family, size));
});

export const fittingsTable: SampleTable = {
  name: 'Fittings',
  headings: [
    'Fitting',
    'Family',
    'End form',
    'Thread',
    'Series',
    'Angle (°)',
    'Size',
    'Bore (mm)',
    'Cut-off (mm)',
    'Measured to',
    'Drop (mm)',
    'Insertion depth (mm)',
    'Working pressure (bar)',
    'Mass (kg)',
    'Price',
    'Pack quantity',
    'Standard',
    'Note',
  ],
  rows: [...sampleFittings.map(fittingRow), ...ferruleRows],
};
