import { gateDial } from '../catalogue/dies';

/** Allowed deviation of every combination in the book, in mm. */
export const TOLERANCE = 0.12;

/** A hose and the coupling crimped on it, with what the invented catalogue says of the crimp. */
interface Combination {
  readonly name: string;
  readonly die: string;
  readonly dial: number;
  /** Crimp diameter in mm. */
  readonly target: number;
}

export const combinations = [
  { name: 'Larch DN 10 with 24° cone', die: 'D22', dial: gateDial(22.8), target: 22.8 },
  { name: 'Larch DN 12 with 24° cone', die: 'D26', dial: gateDial(27.35), target: 27.35 },
  { name: 'Larch DN 16 with 24° cone', die: 'D30', dial: gateDial(31.6), target: 31.6 },
  { name: 'Alder DN 19 with 60° cone', die: 'D30', dial: gateDial(33.4), target: 33.4 },
  { name: 'Rowan DN 19 with split flange', die: 'D35', dial: gateDial(36.4), target: 36.4 },
] as const satisfies readonly Combination[];

export type CombinationName = (typeof combinations)[number]['name'];

/** What was planted in a week's readings, in mm, and so what the reading of the book should find. */
export interface Week {
  readonly sheet: string;
  readonly story: string;
  readonly seed: number;
  /** Monday of the week. */
  readonly monday: readonly [month: number, day: number];
  /** Off by this much for every combination: the machine. */
  readonly machine: number;
  /** Off by this much besides: the combination's own recorded dial. */
  readonly settings: Partial<Record<CombinationName, number>>;
  /** Crimps of each combination that was made this week. */
  readonly crimps: Partial<Record<CombinationName, number>>;
  /** First word of CRIMPCAUSE's table. */
  readonly finding: 'MACHINE' | 'SETTING' | 'MACHINE + SETTING' | 'IN SPEC' | 'NOT ENOUGH DATA';
}

/** Scatter from crimp to crimp, and of one reading around its crimp, as standard deviations in mm. */
export const SCATTER = { crimp: 0.02, reading: 0.015 } as const;

const everyOne = (count: number) =>
  Object.fromEntries(combinations.map(({ name }) => [name, count])) as Record<CombinationName, number>;

export const weeks: readonly Week[] = [
  {
    sheet: 'Week 38',
    story: 'nothing is off',
    seed: 38,
    monday: [9, 14],
    machine: 0,
    settings: {},
    crimps: everyOne(6),
    finding: 'IN SPEC',
  },
  {
    sheet: 'Week 39',
    story: 'one recorded dial is wrong',
    seed: 39,
    monday: [9, 21],
    machine: 0,
    settings: { 'Larch DN 16 with 24° cone': 0.17 },
    crimps: everyOne(6),
    finding: 'SETTING',
  },
  {
    sheet: 'Week 40',
    story: 'the machine has gone off',
    seed: 40,
    monday: [9, 28],
    machine: 0.1,
    settings: {},
    crimps: everyOne(6),
    finding: 'MACHINE',
  },
  {
    sheet: 'Week 41',
    story: 'the machine has gone off, and one recorded dial is wrong besides',
    seed: 41,
    monday: [10, 5],
    machine: -0.1,
    settings: { 'Alder DN 19 with 60° cone': 0.18 },
    crimps: everyOne(6),
    finding: 'MACHINE + SETTING',
  },
  {
    sheet: 'Week 42',
    story: 'the machine has gone off, but two combinations are too few to tell',
    seed: 42,
    monday: [10, 12],
    machine: 0.1,
    settings: {},
    crimps: { 'Larch DN 12 with 24° cone': 3, 'Alder DN 19 with 60° cone': 2 },
    finding: 'NOT ENOUGH DATA',
  },
];
