import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';

/*
 * Costs of the sample's job lines, worked out from its .csv files with plain numbers and another reader: nothing of src/ is used.
 * Cost: cut length × (price + guard's price) ÷ (1 − scrap) + couplings + ferrules + (set-up ÷ quantity + cut + 2 × crimp + test) × wage ÷ 60, as the design says.
 * Price: cost ÷ (1 − margin), the definition of gross margin; 40 % margin = 66.667 % markup.
 */
type Row = Readonly<Record<string, string>>;

function table(name: string): Row[] {
  const text = readFileSync(join(__dirname, `../../../samples/catalogue/${name}.csv`), 'utf8').replace(/^\ufeff/, '');
  return Papa.parse<Row>(text, { header: true, skipEmptyLines: true }).data;
}

const by = (rows: Row[], key: string) => new Map(rows.map(row => [row[key]!, row]));
const hoses = by(table('hoses'), 'Hose');
const fittings = by(table('fittings'), 'Fitting');
const guards = by(table('guards'), 'Guard');
const crimps = table('crimps');
const rates = new Map(table('rates').map(row => [row.Rate!, Number(row.Value)]));
const rate = (name: string) => rates.get(name)!;

export interface Wanted {
  readonly hose: string;
  readonly a: string;
  readonly b: string;
  readonly overall: number;
  readonly quantity: number;
  readonly guard?: string;
}

/** The ferrule of the crimp row that counts: the part itself, else the longest pattern that its name begins with. */
function ferrule(hose: string, fitting: string): string | undefined {
  const rows = crimps.filter(crimp => crimp.Hose === hose);
  const exact = rows.find(crimp => crimp.Fitting === fitting);
  if (exact) return exact.Ferrule;
  const [part, whole] = [fittings.get(fitting)!, hoses.get(hose)!];
  if (part.Family !== whole.Family || part.Size !== whole.Size) return undefined;
  const patterns = rows.filter(crimp => crimp.Fitting!.endsWith('*') && fitting.startsWith(crimp.Fitting!.slice(0, -1)));
  return patterns.sort((a, b) => b.Fitting!.length - a.Fitting!.length)[0]?.Ferrule;
}

/** Parts of the cost of one assembly, not rounded. */
export function costParts(
  { hose, a, b, overall, quantity, guard }: Wanted,
  rises: { hose?: number; fittings?: number; guards?: number } = {},
) {
  const cut = overall - Number(fittings.get(a)!['Cut-off (mm)']) - Number(fittings.get(b)!['Cut-off (mm)']);
  const perMetre = Number(hoses.get(hose)!['Price per length (per m)']) * (1 + (rises.hose ?? 0));
  const couplings = [a, b].flatMap(name => [name, ferrule(hose, name) ?? []].flat());
  const minutes =
    rate('set-up minutes') / quantity + rate('minutes per cut') + 2 * rate('minutes per crimp') + rate('minutes per test');
  return {
    cut,
    hose: ((cut / 1000) * perMetre) / (1 - rate('scrap fraction')),
    fittings: couplings.reduce((sum, name) => sum + Number(fittings.get(name)!.Price), 0) * (1 + (rises.fittings ?? 0)),
    labour: (minutes * rate('labour per hour')) / 60,
    guard: guard
      ? (cut / 1000) *
        (Number(guards.get(guard)!['Price per length (per m)']) / (1 - rate('scrap fraction'))) *
        (1 + (rises.guards ?? 0))
      : 0,
  };
}

/** Rounded up to whole cents; a millionth of a cent is noise of the division. */
export function upToCents(price: number): number {
  return Math.ceil(price * 100 - 1e-6) / 100;
}

/** The lines of the sample sheet Jobs that may be made, in order, as they are typed there; three others are STOP. */
export const sampleLines: readonly Wanted[] = [
  line('Alder DN 6', 'Alder 37° flare swivel straight DN 6', 'Alder 37° flare swivel straight DN 6', 620, 4),
  line('Alder DN 16', 'Alder 24° cone L 45° DN 16', 'Alder 24° cone L straight DN 16', 1120, 2),
  line('Larch DN 10', 'Larch 24° cone L 90° DN 10', 'Larch 24° cone L straight DN 10', 985, 2),
  line('Larch DN 16', 'Larch 24° cone L straight DN 16', 'Larch 24° cone L straight DN 16', 1480, 10),
  line('Larch DN 19', 'Larch O-ring face seal 90° DN 19', 'Larch O-ring face seal 90° DN 19', 860, 2),
  line('Rowan DN 19', 'Rowan 24° cone S straight DN 19', 'Rowan 24° cone S straight DN 19', 3400, 1),
];

function line(hose: string, a: string, b: string, overall: number, quantity: number): Wanted {
  return { hose, a, b, overall, quantity };
}

/** Packs and reels of the sample, by the same files. */
export const bought = {
  reelMetres: (hose: string) => Number(hoses.get(hose)!['Reel length (mm)']) / 1000,
  metrePrice: (hose: string) => Number(hoses.get(hose)!['Price per length (per m)']),
  hosePressure: (hose: string) => Number(hoses.get(hose)!['Working pressure (bar)']),
  fittingPressure: (fitting: string) => Number(fittings.get(fitting)!['Working pressure (bar)']),
  pack: (fitting: string) => Number(fittings.get(fitting)!['Pack quantity']),
  price: (fitting: string) => Number(fittings.get(fitting)!.Price),
  guardPrice: (guard: string) => Number(guards.get(guard)!['Price per length (per m)']),
  ferrule,
  scrap: rate('scrap fraction'),
  rate,
};

/** Parts of the cost of a hose without couplings, by the same design without crimps and test: length × price ÷ (1 − scrap), set-up and cut. */
export function plainHoseParts({ hose, overall, quantity }: Pick<Wanted, 'hose' | 'overall' | 'quantity'>, rise = 0) {
  const perMetre = Number(hoses.get(hose)!['Price per length (per m)']) * (1 + rise);
  return {
    cut: overall,
    hose: ((overall / 1000) * perMetre) / (1 - rate('scrap fraction')),
    fittings: 0,
    labour: ((rate('set-up minutes') / quantity + rate('minutes per cut')) * rate('labour per hour')) / 60,
    guard: 0,
  };
}
