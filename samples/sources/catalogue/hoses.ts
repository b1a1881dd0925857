import type { SampleTable } from './sampleTable';
import { toStep } from './sampleTable';
import { bores, dn, type Size } from './sizes';

/** The four families of the workshop; fittings belong to one of them. Willow is the suction hose. */
export type Family = 'Alder' | 'Larch' | 'Rowan' | 'Willow';

/** One hose: what the standard says of its size, and the invented diameter it is crimped to. */
export interface SampleHose {
  readonly name: string;
  readonly family: Family;
  readonly standard?: string;
  readonly size: Size;
  readonly outsideMm: number;
  readonly pressureBar: number;
  readonly bendMm: number;
  /** Invented. */
  readonly crimpMm: number;
}

type Line = readonly [size: Size, outsideMm: number, pressureBar: number, bendMm: number, crimpMm: number];

interface Construction {
  readonly family: Family;
  /** Word between family and size. */
  readonly kind?: string;
  /** None: all of its values are invented. */
  readonly standard?: string;
  readonly lines: readonly Line[];
}

/**
 * Sizes, outside diameters, working pressures and bend radii of the constructions that the families follow.
 * Source: EN 853 (1SN, 2SN), EN 857 (1SC, 2SC) and EN 856 (4SP, 4SH), recalled from memory: compare with your own copy and correct here.
 * Last number of a line: the crimp diameter, invented.
 */
const constructions: readonly Construction[] = [
  {
    family: 'Alder',
    standard: 'EN 853 1SN',
    lines: [
      [6, 13.4, 225, 100, 16.9],
      [8, 15, 215, 115, 18.7],
      [10, 17.4, 180, 130, 21.3],
      [12, 20.6, 160, 180, 24.9],
      [16, 23.7, 130, 200, 28.4],
      [19, 27.7, 105, 240, 33.4],
      [25, 35.6, 88, 300, 41.1],
      [31, 43.5, 63, 420, 49.2],
      [38, 50.6, 50, 500, 56.9],
      [51, 64, 40, 630, 71.2],
    ],
  },
  {
    family: 'Alder',
    kind: 'compact',
    standard: 'EN 857 1SC',
    lines: [
      [6, 13, 225, 75, 16.1],
      [8, 14.6, 215, 85, 17.8],
      [10, 16.6, 180, 90, 20.2],
      [12, 19.7, 160, 130, 23.9],
      [16, 23, 130, 150, 27.6],
      [19, 26.6, 105, 180, 31.9],
      [25, 34.6, 88, 230, 39.6],
    ],
  },
  {
    family: 'Larch',
    standard: 'EN 853 2SN',
    lines: [
      [6, 15, 400, 100, 18.05],
      [8, 16.6, 350, 115, 19.45],
      [10, 19, 330, 130, 22.8],
      [12, 22.2, 275, 180, 27.35],
      [16, 25.4, 250, 200, 31.6],
      [19, 29.3, 215, 240, 35.2],
      [25, 38.1, 165, 300, 44.9],
      [31, 48.3, 125, 420, 55.1],
      [38, 54.6, 90, 500, 61.8],
    ],
  },
  {
    family: 'Larch',
    kind: 'compact',
    standard: 'EN 857 2SC',
    lines: [
      [6, 14.2, 400, 75, 17.3],
      [8, 16, 350, 85, 18.85],
      [10, 18.3, 330, 90, 21.9],
      [12, 21.5, 275, 130, 26.1],
      [16, 24.7, 250, 170, 30.3],
      [19, 28.6, 215, 200, 34.1],
      [25, 36.6, 165, 250, 42.3],
    ],
  },
  {
    family: 'Rowan',
    standard: 'EN 856 4SP',
    lines: [
      [10, 21.4, 445, 180, 25.6],
      [12, 24.6, 415, 230, 29.1],
      [16, 28.2, 350, 250, 32.9],
      [19, 32.2, 350, 300, 36.4],
      [25, 39.7, 280, 340, 44.2],
      [31, 50.8, 210, 460, 56.3],
      [38, 57.2, 185, 560, 63.1],
    ],
  },
  {
    family: 'Rowan',
    kind: 'high',
    standard: 'EN 856 4SH',
    lines: [
      [19, 32.2, 420, 280, 36.75],
      [25, 38.7, 380, 340, 43.4],
      [31, 45.5, 325, 460, 51.2],
      [38, 53.5, 290, 560, 59.6],
    ],
  },
  {
    family: 'Willow',
    kind: 'suction',
    lines: [
      [25, 37, 16, 130, 41.6],
      [31, 44, 14, 160, 48.7],
      [38, 51, 10, 200, 55.3],
      [51, 65, 7, 260, 70.4],
    ],
  },
];

/** Every hose of the workshop. */
export const sampleHoses: readonly SampleHose[] = constructions.flatMap(({ family, kind, standard, lines }) =>
  lines.map(([size, outsideMm, pressureBar, bendMm, crimpMm]) => ({
    name: [family, kind, dn(size)].filter(Boolean).join(' '),
    family,
    ...(standard !== undefined && { standard }),
    size,
    outsideMm,
    pressureBar,
    bendMm,
    crimpMm,
  })),
);

const layers = { Alder: 1, Larch: 1.45, Rowan: 2.3, Willow: 0.6 } as const satisfies Record<Family, number>;
const NOTE =
  'sizes, pressure, bend radius, temperatures from memory of the standard: check; fluids, cover, change of length, mass, price, reel invented';
const ALL_INVENTED = 'all values invented';
/** Coldest and hottest in °C, fluids and vacuum (bar, where something is said of it) of a suction hose; invented. */
const SUCTION = { coldest: -30, hottest: 80, fluids: 'mineral oil, water-glycol, rapeseed ester', vacuumBar: 0.8 } as const;

function row(hose: SampleHose) {
  const { name, family, standard, size, outsideMm, pressureBar, bendMm } = hose;
  const bore = bores[size].mm;
  const compact = name.includes('compact');
  const wallMm2 = outsideMm ** 2 - bore ** 2;
  const mass = toStep(wallMm2 * 0.0016 * Math.sqrt(layers[family]), 0.01);
  const price = toStep((1.1 + wallMm2 * 0.014) * layers[family] * (compact ? 1.12 : 1), 0.05);
  const suction = family === 'Willow' ? SUCTION : undefined;
  const fluids = suction?.fluids ?? (compact ? 'mineral oil, rapeseed ester' : 'mineral oil, water-glycol');
  const cover = family === 'Rowan' ? 'abrasion resistant' : 'rubber';
  return [
    name,
    family,
    standard,
    dn(size),
    bore,
    outsideMm,
    pressureBar,
    bendMm,
    suction?.coldest ?? -40,
    suction?.hottest ?? 100,
    // The standards of the pressure hoses say nothing of a vacuum that could be repeated here.
    suction?.vacuumBar,
    fluids,
    cover,
    suction ? undefined : 0.04,
    suction ? undefined : 0.02,
    mass,
    price,
    size <= 19 ? 100_000 : 40_000,
    suction ? ALL_INVENTED : NOTE,
  ];
}

export const hosesTable: SampleTable = {
  name: 'Hoses',
  headings: [
    'Hose',
    'Family',
    'Standard',
    'Size',
    'Bore (mm)',
    'Outside diameter (mm)',
    'Working pressure (bar)',
    'Bend radius (mm)',
    'Coldest (°C)',
    'Hottest (°C)',
    'Vacuum (bar)',
    'Fluids',
    'Cover',
    'Shortens',
    'Lengthens',
    'Mass per length (kg/m)',
    'Price per length (per m)',
    'Reel length (mm)',
    'Note',
  ],
  rows: sampleHoses.map(row),
};
