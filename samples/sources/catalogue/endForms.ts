import { bores, type Size } from './sizes';

/** How long a coupling is and what it carries; the standards' part recalled from memory, the rest invented. */
export interface EndForm {
  readonly endForm: string;
  readonly series?: 'L' | 'S';
  readonly standard: string;
  readonly measuredTo: 'seat' | 'end' | 'centreline';
  /** Thread, and working pressure in bar, of each size there is. */
  readonly sizes: Partial<Record<Size, readonly [thread: string, pressureBar: number]>>;
  /** Cut-off in mm over that of the hose end alone, by angle; the second number goes with the bore. */
  readonly reach: Partial<Record<0 | 45 | 90, readonly [fixedMm: number, perBore: number]>>;
}

/** Invented: from the hose's cut end to the shoulder of the coupling, in mm. */
const hoseEndMm: Readonly<Record<Size, number>> = {
  6: 17.5,
  8: 18,
  10: 19.5,
  12: 21.5,
  16: 24,
  19: 26.5,
  25: 31,
  31: 36.5,
  38: 40,
  51: 47,
};

/** Threads and pressures (of 37° flares 240 bar at DN 16; no 60° cone at DN 8, as there is no G 5/16): ISO 228-1, ISO 8434-1, -2, -3, -6, ISO 6162-2 and ISO 12151, recalled from memory: compare with your own copy. */
export const endForms = {
  light: {
    endForm: '24° cone',
    series: 'L',
    standard: 'ISO 12151-2',
    measuredTo: 'seat',
    sizes: {
      6: ['M14x1.5', 315],
      8: ['M16x1.5', 315],
      10: ['M18x1.5', 315],
      12: ['M22x1.5', 315],
      16: ['M26x1.5', 315],
      19: ['M30x2', 160],
      25: ['M36x2', 160],
      31: ['M45x2', 160],
      38: ['M52x2', 160],
    },
    reach: { 0: [6, 0], 45: [16, 0.6], 90: [20, 1] },
  },
  heavy: {
    endForm: '24° cone',
    series: 'S',
    standard: 'ISO 12151-2',
    measuredTo: 'seat',
    sizes: {
      6: ['M16x1.5', 630],
      8: ['M18x1.5', 630],
      10: ['M20x1.5', 630],
      12: ['M24x1.5', 400],
      16: ['M30x2', 400],
      19: ['M36x2', 400],
      25: ['M42x2', 400],
      31: ['M52x2', 315],
    },
    reach: { 0: [6, 0], 45: [16, 0.6], 90: [20, 1] },
  },
  flare: {
    endForm: '37° flare swivel',
    standard: 'ISO 12151-5',
    measuredTo: 'seat',
    sizes: {
      6: ['7/16-20 UNF', 350],
      8: ['1/2-20 UNF', 350],
      10: ['9/16-18 UNF', 350],
      12: ['3/4-16 UNF', 310],
      16: ['7/8-14 UNF', 240],
      19: ['1 1/16-12 UN', 240],
      25: ['1 5/16-12 UN', 210],
      31: ['1 5/8-12 UN', 170],
    },
    reach: { 0: [9, 0], 90: [22, 1] },
  },
  faceSeal: {
    endForm: 'O-ring face seal',
    standard: 'ISO 12151-1',
    measuredTo: 'seat',
    sizes: {
      6: ['9/16-18 UNF', 630],
      10: ['11/16-16 UN', 630],
      12: ['13/16-16 UN', 630],
      16: ['1-14 UNS', 400],
      19: ['1 3/16-12 UN', 400],
      25: ['1 7/16-12 UN', 400],
    },
    reach: { 0: [4, 0], 90: [24, 0.8] },
  },
  cone60: {
    endForm: '60° cone',
    standard: 'ISO 12151-6',
    measuredTo: 'seat',
    sizes: {
      6: ['G 1/4', 350],
      10: ['G 3/8', 350],
      12: ['G 1/2', 350],
      16: ['G 5/8', 250],
      19: ['G 3/4', 250],
      25: ['G 1', 200],
      31: ['G 1 1/4', 160],
      38: ['G 1 1/2', 125],
      51: ['G 2', 80],
    },
    reach: { 0: [7, 0], 90: [21, 1] },
  },
  flange: {
    endForm: 'split flange',
    standard: 'ISO 12151-3, ISO 6162-2',
    measuredTo: 'seat',
    sizes: {
      19: [`flange head 3/4"`, 420],
      25: [`flange head 1"`, 420],
      31: [`flange head 1 1/4"`, 420],
      38: [`flange head 1 1/2"`, 420],
    },
    reach: { 0: [22, 0], 45: [22, 0.9], 90: [22, 1.5] },
  },
} as const satisfies Record<string, EndForm>;

export type EndFormName = keyof typeof endForms;

/** Cut-off of a coupling in mm, to the nearest half. */
export function cutOffMm(form: EndForm, size: Size, angle: 0 | 45 | 90): number {
  const [fixed, perBore] = form.reach[angle] ?? [0, 0];
  return Math.round((hoseEndMm[size] + fixed + perBore * bores[size].mm) * 2) / 2;
}
