import { seededUniform } from '../../../bench/seededUniform';
import { excelCall } from '../excelCall';
import { pick, wholeBetween, type Uniform } from './cells';

/*
 * One workshop in two units: every length is a whole number of thousandths of an inch, 0.0254 mm each (the inch is 25.4 mm by ISO 31-1 and ANSI),
 * so that both sheets hold the same lengths without any rounding, and the answers must agree to the last digit.
 */

const CASES = Number(process.env.SCALING_CASES ?? 150);
const SEED = Number(process.env.FUZZ_SEED ?? 20261130);
const ROWS = 12;

type Unit = 'mm' | 'in';
const UNITS = ['mm', 'in'] as const;

/** Thousandths of an inch as a cell of a sheet in that unit. */
const cell = (mils: number, unit: Unit): number => Number(unit === 'in' ? `${mils}e-3` : (mils * 0.0254).toFixed(4));

/** A length in inches as millimetres, in the 15 digits of a cell. */
const inMm = (inches: number): number => Number((inches * 25.4).toPrecision(14));
const rounded = (value: unknown): unknown => (typeof value === 'number' ? Number(value.toPrecision(14)) : value);
/** A sentence without its lengths. */
const withoutLengths = (text: unknown): unknown =>
  typeof text === 'string'
    ? text
        .replace(/-?[\d.]+ (?:mm|in)\b/g, 'a length')
        .replace(/\b(bore|above|below) [\d.]+/g, '$1')
        .replace(/-?\d+\.\d+/g, 'a number')
    : text;

interface Shop {
  readonly bores: readonly number[];
  readonly overall: readonly (readonly [hose: string, a: string, b: string, mils: number])[];
  readonly tables: (unit: Unit) => (unknown[][] | null)[];
}

function shop(uniform: Uniform): Shop {
  const bores = [250, 375, 500, 750, 1000].map(bore => bore + pick(uniform, [0, 0, 2, 15]));
  const between = (from: number, to: number) => wholeBetween(uniform, from, to);
  const hoses = bores.map((bore, index) => ({
    name: `Alder ${index}`,
    bore,
    outside: bore + between(200, 400),
    bend: bore * 12,
    pressure: between(100, 400),
  }));
  const fittings = bores.flatMap((bore, index) =>
    ['a', 'b'].map(end => ({
      name: `Alder end ${index}${end}`,
      bore: bore + pick(uniform, [0, 0, 0, 6, 11]),
      cutOff: between(-200, 2500),
      depth: between(400, 1500),
    })),
  );
  const crimps = bores.flatMap((bore, index) =>
    uniform() < 0.9 ? [{ hose: `Alder ${index}`, diameter: bore + between(250, 380), tolerance: between(3, 9) }] : [],
  );
  const free = between(500, 8000);
  const overall = Array.from({ length: ROWS }, () => {
    const [one, other] = [between(0, bores.length - 1), between(0, bores.length - 1)];
    const [a, b] = [fittings[2 * one]!, fittings[2 * (uniform() < 0.8 ? one : other) + 1]!];
    // The least assembly that may be made, a thousandth beside it, or one of any length.
    const least = a.cutOff + b.cutOff + a.depth + b.depth + free;
    return [`Alder ${one}`, a.name, b.name, pick(uniform, [least, least - 1, least + 1, least + between(100, 90_000)])] as const;
  });
  const tables = (unit: Unit) => [
    [
      [
        'Hose',
        'Family',
        `Bore (${unit})`,
        `Outside diameter (${unit})`,
        `Bend radius (${unit})`,
        'Working pressure (bar)',
        'Mass per length (kg/m)',
        'Price per length (per m)',
        'Coldest (°C)',
        'Hottest (°C)',
      ],
      ...hoses.map(hose => [
        hose.name,
        'Alder',
        cell(hose.bore, unit),
        cell(hose.outside, unit),
        cell(hose.bend, unit),
        hose.pressure,
        0.5,
        8,
        -40,
        100,
      ]),
    ],
    [
      [
        'Fitting',
        'Family',
        'End form',
        `Bore (${unit})`,
        `Cut-off (${unit})`,
        `Insertion depth (${unit})`,
        'Working pressure (bar)',
        'Mass (kg)',
        'Price',
      ],
      ...fittings.map(part => [
        part.name,
        'Alder',
        '24° cone',
        cell(part.bore, unit),
        cell(part.cutOff, unit),
        cell(part.depth, unit),
        250,
        0.1,
        4,
      ]),
    ],
    [
      ['Hose', 'Fitting', 'Die', 'Dial', `Crimp diameter (${unit})`, `Tolerance (${unit})`],
      ...crimps.map(crimp => [crimp.hose, 'Alder*', 'D1', 300, cell(crimp.diameter, unit), cell(crimp.tolerance, unit)]),
    ],
    null,
    [
      ['Rate', 'Value'],
      ['labour per hour', 60],
      ['minutes per cut', 2],
      ['minutes per crimp', 1.5],
      ['set-up minutes', 30],
      [`shortest free hose (${unit})`, cell(free, unit)],
    ],
  ];
  return { bores, overall, tables };
}

async function answersIn(unit: Unit, { bores, overall, tables }: Shop) {
  const [[handle]] = (await excelCall('CATALOGUE', ...tables(unit))) as [[unknown]];
  const column = (place: 0 | 1 | 2) => overall.map(row => [row[place]]);
  const [hoses, a, b, lengths] = [column(0), column(1), column(2), overall.map(([, , , mils]) => [cell(mils, unit)])];
  return {
    assembly: await excelCall('ASSEMBLY', handle, hoses, a, b, lengths),
    cost: await excelCall('UNITCOST', handle, hoses, a, b, lengths, 10),
    setup: await excelCall('CRIMPSETUP', handle, hoses, a),
    found: await excelCall('FINDHOSE', handle, cell(bores[2]!, unit), 100, cell(bores[3]! * 12, unit), -20, 60),
  };
}

test(`an assembly is the same one in mm and in inches, in ${CASES} workshops from seed ${SEED}`, async () => {
  const seen = new Set<unknown>();
  for (let index = 0; index < CASES; index += 1) {
    const made = shop(seededUniform(SEED + index));
    const [mm, inches] = [await answersIn('mm', made), await answersIn('in', made)];
    const seed = SEED + index;
    const assembly = (rows: unknown[][], scale: (length: number) => number) =>
      rows.map(([cut, pressure, mass, verdict]) => [
        typeof cut === 'number' ? scale(cut) : withoutLengths(cut),
        pressure,
        rounded(mass),
        withoutLengths(verdict),
      ]);
    expect({ seed, rows: assembly(inches.assembly, inMm) }).toEqual({
      seed,
      rows: assembly(mm.assembly, rounded as (length: number) => number),
    });
    for (const row of mm.assembly) seen.add(String(row[3]).slice(0, 9));
    const plain = (rows: unknown[][]) => rows.map(row => row.map(value => withoutLengths(rounded(value))));
    expect({ seed, rows: plain(inches.cost) }).toEqual({ seed, rows: plain(mm.cost) });
    const setup = (rows: unknown[][], scale: (length: number) => number) =>
      rows.map(row => row.map((value, place) => (typeof value === 'number' && [2, 3, 4].includes(place) ? scale(value) : value)));
    expect({ seed, rows: setup(inches.setup, inMm) }).toEqual({
      seed,
      rows: setup(mm.setup, rounded as (length: number) => number),
    });
    seen.add(mm.found.length > 1 ? 'hoses found' : 'no hose');
    const hoses = (rows: unknown[][]) => rows.map(row => [row[0], row[2]]);
    expect({ seed, rows: hoses(inches.found).map(row => row.map(withoutLengths)) }).toEqual({
      seed,
      rows: hoses(mm.found).map(row => row.map(withoutLengths)),
    });
  }
  expect([...seen]).toEqual(expect.arrayContaining(['OK', 'too short', 'sizes dif', 'no crimp ', 'hoses found']));
});

test(`crimps and dials are judged alike in mm and in inches, in ${30 * CASES} crimps from seed ${SEED}`, async () => {
  const uniform = seededUniform(SEED);
  const crimps = Array.from({ length: 30 * CASES }, () => {
    const target = wholeBetween(uniform, 500, 3000);
    const tolerance = wholeBetween(uniform, Math.ceil(target / 1900), Math.floor(target / 15));
    const off = pick(uniform, [tolerance, -tolerance, tolerance + 1, -tolerance - 1, 0, 2 * tolerance, -2 * tolerance]);
    const apart = wholeBetween(uniform, 0, tolerance);
    const readings = [target + off + apart, target + off - apart, target + off, target + off + pick(uniform, [-1, 0, 0, 1])];
    return { target, tolerance, readings, step: wholeBetween(uniform, 1, 4) };
  });
  const [mm, inches] = await Promise.all(
    UNITS.map(async unit => {
      const block = (values: (crimp: (typeof crimps)[number]) => number[]) =>
        crimps.map(crimp => values(crimp).map(mils => cell(mils, unit)));
      const [readings, target, tolerance] = [
        block(crimp => crimp.readings),
        block(crimp => [crimp.target]),
        block(crimp => [crimp.tolerance]),
      ];
      return {
        check: await excelCall('CRIMPCHECK', readings, target, tolerance, cell(2, unit), cell(60, unit)),
        dial: await excelCall(
          'NEXTDIAL',
          400,
          readings,
          target,
          tolerance,
          block(crimp => [crimp.step]),
        ),
        detail: await excelCall('CRIMPDETAIL', readings, target, tolerance),
      };
    }),
  );
  const verdicts = mm!.check.map(([verdict]) => verdict);
  expect(new Set(verdicts)).toEqual(new Set(['IN SPEC', 'TIGHT', 'LOOSE', 'UNSURE', 'OVAL']));
  const texts = (rows: unknown[][]) => rows.map(([value]) => withoutLengths(value));
  expect(inches!.check).toEqual(mm!.check);
  expect(texts(inches!.dial)).toEqual(texts(mm!.dial));
  const detail = (rows: unknown[][], scale: (length: number) => number) =>
    rows.map(row => row.map(value => (typeof value === 'number' ? scale(value) : value)));
  expect(detail(inches!.detail, inMm)).toEqual(detail(mm!.detail, rounded as (length: number) => number));
});
