import { Decimal } from '../src/core/units/decimal';
import { seededUniform } from './seededUniform';

/** What was planted in a week. */
export type Planted = 'nothing' | 'machine' | 'setting' | 'machine and setting';

/** One week of one machine: what it truly does, and the deviations that a caliper saw. In shares of the tolerance. */
export interface SimulatedWeek {
  readonly planted: Planted;
  readonly machine: number;
  readonly combinations: readonly {
    readonly name: string;
    /** Own deviation, the machine's not counted; 0 where its setting is right. */
    readonly own: number;
    readonly settingOff: boolean;
    readonly deviations: readonly Decimal[];
  }[];
}

/** How much is measured in a week, and how plainly: ranges, low and high. In shares of the tolerance where it is a diameter. */
export interface WeekKind {
  readonly combinations: readonly [number, number];
  readonly crimps: readonly [number, number];
  /** Standard deviation of the mean of one crimp's readings. */
  readonly scatter: readonly [number, number];
  /** How far a machine or setting is off that is off. */
  readonly off: readonly [number, number];
}

const PLANTED: readonly Planted[] = ['nothing', 'machine', 'setting', 'machine and setting'];

/**
 * Weeks with planted causes, in turn. Combinations differ by 5 % of the tolerance (standard deviation) even where all is right; a machine that is
 * right is off by up to 10 % of it. What is off is off either way. Deviations are rounded like caliper readings, to 1 % of the tolerance.
 */
export function simulatedWeeks(count: number, seed: number, kind: WeekKind): SimulatedWeek[] {
  const uniform = seededUniform(seed);
  const between = (low: number, high: number) => low + (high - low) * uniform();
  const whole = (low: number, high: number) => Math.floor(between(low, high + 1));
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  const off = () => between(...kind.off) * (uniform() < 0.5 ? -1 : 1);

  return Array.from({ length: count }, (_, week) => {
    const planted = PLANTED[week % PLANTED.length]!;
    const machine = planted.startsWith('machine') ? off() : between(-0.1, 0.1);
    const scatter = between(...kind.scatter);
    const size = whole(...kind.combinations);
    const wrong = planted.endsWith('setting') ? whole(0, size - 1) : -1;
    const combinations = Array.from({ length: size }, (__, index) => {
      const own = index === wrong ? off() : 0.05 * normal();
      const deviations = Array.from({ length: whole(...kind.crimps) }, () =>
        new Decimal(machine + own + scatter * normal()).toDecimalPlaces(2),
      );
      return { name: `combination ${index + 1}`, own, settingOff: index === wrong, deviations };
    });
    return { planted, machine, combinations };
  });
}
