import { hoseJobs } from '../src/sheets/cutlist/hoseJob';
import type { CutLine } from '../src/sheets/jobs/cutLine';
import type { CutSettings } from '../src/sheets/cutlist/cutSettings';
import type { Gathered } from '../src/sheets/cutlist/gatherCuts';
import type { RackRow } from '../src/sheets/rack/rackRow';
import { Decimal } from '../src/core/units/decimal';
import { seededUniform } from './seededUniform';

const HOSES = 12;
const LINES = 600;
const TODAY = '2026-10-05';

/**
 * An invented week: 600 lines over 12 hoses, 1 to 6 pieces of 250 … 2600 mm each, and a rack of offcuts and reels. Every third rack is short
 * of one piece in seven.
 */
export function week(isOldestFirst: boolean): Pick<Gathered, 'jobs' | 'settings' | 'reelLengths'> {
  const uniform = seededUniform(20261005);
  const whole = (low: number, high: number) => Math.floor(low + (high - low + 1) * uniform());
  const d = (value: number) => new Decimal(value);
  const settings: CutSettings = {
    unit: 'mm',
    step: d(1),
    kerf: d(3),
    squaring: d(10),
    keep: d(500),
    ageLimitMonths: undefined,
    isOldestFirst,
  };
  const lines = Array.from({ length: LINES }, (_, k): CutLine => {
    const cutLength = d(whole(250, 2600));
    const row = k + 2;
    const hose = `Alder DN ${(k % HOSES) + 1}`;
    return { row, line: String(row), label: `job ${row}`, hose, quantity: whole(1, 6), wanted: cutLength, cutLength };
  });
  const rack = Array.from({ length: HOSES }, (_, hose) => {
    const mine = lines.filter((_line, k) => k % HOSES === hose);
    const needed = mine.reduce((sum, { cutLength, quantity }) => sum + (cutLength.toNumber() + 3) * quantity, 0);
    const rows: RackRow[] = [];
    for (let there = 0; there < needed * (hose % 3 === 2 ? 0.85 : 1.3);) {
      const length = rows.length % 3 === 0 ? 20_000 : whole(700, 9000);
      const [place, lot] = [`${'ABCD'[hose % 4]}${(rows.length % 20) + 1}`, `L${10 * hose + (rows.length % 9)}`];
      const made = `${whole(2022, 2026)}-0${whole(1, 9)}-01`;
      rows.push({ row: rows.length + 2, hose: `Alder DN ${hose + 1}`, length: d(length), quantity: 1, place, lot, made });
      there += length - 10;
    }
    return rows;
  }).flat();
  const reelLengths = new Map(Array.from({ length: HOSES }, (_, hose) => [`alder dn ${hose + 1}`, d(20_000)]));
  return { jobs: hoseJobs(lines, rack, settings, TODAY), settings, reelLengths };
}
