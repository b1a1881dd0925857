import { randomNumbers } from '../measurementBook/randomNumbers';

/** A line of one of the six weeks before this one. */
export interface MadeLine {
  readonly label: string;
  readonly hose: string;
  readonly couplings: readonly [a: string, b: string];
  readonly overall: number;
  /** Lot of the hose, as in the rack. */
  readonly lot: string;
  readonly reel: string;
}

/** What was made again and again in these weeks; hoses that share a die or not. */
export const madeLines: readonly MadeLine[] = [
  {
    label: 'topper lift',
    hose: 'Larch DN 12',
    couplings: ['Larch 24° cone S straight DN 12', 'Larch 24° cone S 90° DN 12'],
    overall: 1250,
    lot: '58/26',
    reel: 'B1',
  },
  {
    label: 'steering',
    hose: 'Larch DN 10',
    couplings: ['Larch 24° cone S straight DN 10', 'Larch 24° cone S straight DN 10'],
    overall: 740,
    lot: '49/26',
    reel: 'A3',
  },
  {
    label: 'pick-up lift',
    hose: 'Larch DN 16',
    couplings: ['Larch 24° cone L straight DN 16', 'Larch 24° cone L 45° DN 16'],
    overall: 1120,
    lot: '70/25',
    reel: 'B3',
  },
  {
    label: 'tipping ram',
    hose: 'Alder DN 16',
    couplings: ['Alder 24° cone L 45° DN 16', 'Alder 24° cone L straight DN 16'],
    overall: 2150,
    lot: '91/25',
    reel: 'D1',
  },
  {
    label: 'boom',
    hose: 'Rowan DN 19',
    couplings: ['Rowan 24° cone S straight DN 19', 'Rowan 24° cone S straight DN 19'],
    overall: 3400,
    lot: '85/25',
    reel: 'C2',
  },
];

/** First day of a week of 2026, by its number. */
const monday = (week: number) => Date.UTC(2026, 8, 7) + (week - 37) * 7 * 86_400_000;

/** What was planted: from week 41 on, everything that the machine at the gate crimps is too large by this much, in mm. */
export const GONE_OFF = { fromWeek: 41, by: 0.12 } as const;
const SCATTER = { crimp: 0.02, reading: 0.012 } as const;
const WEEKS = [37, 38, 39, 40, 41, 42];
const PIECES_A_LINE = 3;

/** One end as it was measured. */
export type Readings = readonly [number, number, number, number];

/** A piece as somebody made it. */
export interface MadePiece {
  readonly line: MadeLine;
  readonly order: string;
  readonly lineNumber: number;
  readonly number: number;
  readonly day: Date;
  /** How far each end is off its target, reading by reading, in mm. */
  readonly off: readonly [Readings, Readings];
  /** Finished length less the overall length, in mm. */
  readonly longer: number;
}

const hundredths = (value: number) => Math.round(value * 100) / 100;

/** The pieces of six weeks, in the order they were made. */
export function madePieces(): MadePiece[] {
  const random = randomNumbers(4237);
  const end = (week: number): Readings => {
    const off = (week >= GONE_OFF.fromWeek ? GONE_OFF.by : 0) + random.normal(SCATTER.crimp);
    return [0, 0, 0, 0].map(() => hundredths(off + random.normal(SCATTER.reading))) as unknown as Readings;
  };
  return WEEKS.flatMap(week =>
    madeLines.flatMap((line, index) =>
      Array.from({ length: PIECES_A_LINE }, (_, piece) => ({
        line,
        order: `W${week}`,
        lineNumber: index + 1,
        number: piece + 1,
        day: new Date(monday(week) + index * 86_400_000),
        off: [end(week), end(week)] as const,
        longer: Math.round(random.normal(1) + 2),
      })),
    ),
  );
}
