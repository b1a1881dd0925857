import { Decimal } from '../../../src/core/units/decimal';
import type { CutSettings } from '../../../src/sheets/cutlist/cutSettings';
import { seededUniform } from '../../../bench/seededUniform';

type Cell = string | number;

/** A job line of a random week; lengths in whole millimetres. */
export interface RandomLine {
  readonly line: string;
  readonly hose: string;
  readonly length: number;
  readonly quantity: number;
}

/** Stock of a random week; lengths in whole millimetres. */
export interface RandomStock {
  readonly hose: string;
  readonly length: number;
  readonly quantity: number;
  readonly reel: string;
  readonly lot: string;
}

/** A random week of an invented shop, as sheets and as what they mean. */
export interface RandomWeek {
  readonly seed: number;
  readonly lines: readonly RandomLine[];
  readonly stock: readonly RandomStock[];
  readonly settings: CutSettings;
  readonly sheets: Readonly<Record<'Jobs' | 'Rack', readonly (readonly Cell[])[]>>;
}

const HOSES = ['Larch DN 12', 'Rowan DN 19', 'Alder DN 8'];

/** Jobs and rack of a random week: one to three hoses, racks that may be too short, lots, reels in metres or millimetres. */
export function randomWeek(seed: number): RandomWeek {
  const uniform = seededUniform(seed);
  const whole = (low: number, high: number) => low + Math.floor(uniform() * (high - low + 1));
  const pick = <T>(from: readonly T[]): T => from[whole(0, from.length - 1)]!;
  const hoses = HOSES.slice(0, whole(1, 3));
  const lines = Array.from({ length: whole(1, 9) }, (_, index) => ({
    line: String(index + 1),
    hose: pick(hoses),
    length: pick([whole(150, 3500), 570, 1250]),
    quantity: whole(1, 5),
  }));
  const stock = Array.from({ length: whole(1, 8) }, (_, index) => ({
    hose: pick(hoses),
    length: pick([whole(300, 4000), whole(4000, 20_000)]),
    quantity: whole(1, 3),
    reel: `R${index + 1}`,
    lot: `L${whole(1, 4)}`,
  }));
  const keeps = uniform() < 0.8;
  const settings: CutSettings = {
    unit: 'mm',
    step: new Decimal(1),
    kerf: new Decimal(pick([0, 2, 3, 5])),
    squaring: pick([undefined, new Decimal(20)]),
    keep: keeps ? new Decimal(pick([250, 500, 1000])) : undefined,
    handling: pick([undefined, new Decimal(100)]),
    ageLimitMonths: undefined,
    isOldestFirst: uniform() < 0.2,
  };
  const inMetres = uniform() < 0.5;
  const jobRows = lines.map(({ line, hose, length, quantity }) => [line, hose, quantity, length, '']);
  const rackRows = stock.map(({ hose, length, quantity, reel, lot }) => [
    reel,
    lot,
    hose,
    inMetres ? length / 1000 : length,
    quantity,
    `shelf ${reel}`,
  ]);
  return {
    seed,
    lines,
    stock,
    settings,
    sheets: {
      Jobs: [['Line', 'Hose', 'Quantity', 'Cut length (mm)', 'Status'], ...jobRows],
      Rack: [['Reel', 'Lot', 'Hose', inMetres ? 'Length (m)' : 'Length (mm)', 'Pieces', 'Place'], ...rackRows],
    },
  };
}
