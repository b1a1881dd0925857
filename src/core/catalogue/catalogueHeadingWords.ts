import type { TableName } from './tables/catalogueTables';

type Words = Readonly<Record<string, string>>;

const PART =
  'part, part no, part number, item, item no, item number, article, article no, product, code, name, ref, reference, sku';
const BORE =
  'id, inside diameter, inner diameter, internal diameter, inside dia, inner dia, bore diameter, bore dia, nominal bore';
const HOSE_BORE = 'hose bore, hose id, hose inside diameter, bore of hose, for hose bore';
const OUTSIDE = 'od, outside dia, outer diameter, outer dia, external diameter, hose od, hose outside diameter';
const PRESSURE =
  'wp, mwp, mawp, pressure, max working pressure, maximum working pressure, max wp, work pressure, working press, operating pressure, ' +
  'max operating pressure, max pressure, maximum pressure, rated pressure, pressure rating, design pressure';
const COLDEST =
  'min temp, minimum temp, min temperature, minimum temperature, temp min, temperature min, tmin, lowest temperature, coldest temperature';
const HOTTEST =
  'max temp, maximum temp, max temperature, maximum temperature, temp max, temperature max, tmax, highest temperature, hottest temperature';
const SIZE = 'dash, dash size, nominal size, dn, hose size, nominal, nw, dash no';
const NOTE = 'notes, remark, remarks, comment, comments, description';
const PRICE = 'list price, unit price, net price, cost, price each, each, list';
const LENGTH_PRICE =
  'price, list price, unit price, net price, cost, price per metre, price per meter, price per m, price per foot, price per ft, price m, price ft, cost per metre, cost per meter, cost per foot';
const DEPTH =
  'insertion, depth, insertion length, hose insertion, insert depth, push on depth, depth of insertion, insertion dim, hose insertion depth';
const FAMILY =
  'product family, hose family, fitting family, range, product line, group, product group, hose series, fitting series';
const FITTING =
  'coupling, couplings, end fitting, hose end, hose fitting, fitting no, fitting part no, fitting part number, coupling no, insert, stem, connector';
const HOSE = 'hose type, hose no, hose part no, hose part number, hose code, hose name';
const DIE = 'die set, dies, die no, die number, die size, jaws, segment, segments';
const DIAL = 'dial setting, setting, machine setting, crimper setting, crimp setting, scale, scale setting, digits';

/**
 * What else people write over a column, by table and field; words are compared without case, blanks, hyphens, points and slashes.
 * Common practice: plain and short words of the trade, of no particular list.
 */
export const catalogueHeadingWords = {
  hoses: {
    hose: `${HOSE}, ${PART}, type`,
    family: `${FAMILY}, series, style`,
    standard: 'norm, spec, specification, construction, standards',
    size: SIZE,
    bore: `${BORE}, ${HOSE_BORE}`,
    outsideDiameter: OUTSIDE,
    workingPressure: PRESSURE,
    bendRadius:
      'min bend, minimum bend, min bend radius, minimum bend radius, bend, bend rad, min bend rad, mbr, bending radius, min bending radius',
    coldest: COLDEST,
    hottest: HOTTEST,
    vacuum: 'vacuum rating, max vacuum, suction, negative pressure',
    fluids: 'fluid, media, medium, suitable for, suitable fluids, compatible fluids',
    cover: 'outer cover, cover type, cover material',
    shortens: 'shortening, max shortening, contraction',
    lengthens: 'lengthening, max lengthening, elongation',
    massPerLength:
      'weight, mass, weight per metre, weight per meter, weight per foot, weight per length, mass per metre, mass per meter',
    pricePerLength: LENGTH_PRICE,
    reelLength: 'reel, coil length, roll length, drum length, length per reel, coil, roll',
    note: NOTE,
  },
  fittings: {
    fitting: `${FITTING}, ${PART}`,
    family: FAMILY,
    endForm: 'end type, end style, connection, connection type, termination, thread type, end, form, style, type, end connection',
    thread: 'thread size, threads, thread form',
    series: 'duty, class',
    angle: 'elbow, degrees, deg, bend angle, elbow angle',
    size: SIZE,
    bore: `${HOSE_BORE}, ${BORE}, for hose`,
    cutOff:
      'cut off length, cutoff length, cut off factor, cutoff factor, cut off dimension, cut off dim, deduction, length deduction, deduct',
    measuredTo: 'measured from, reference point',
    drop: 'drop length, drop height',
    insertionDepth: DEPTH,
    workingPressure: PRESSURE,
    mass: 'weight, weight each',
    price: PRICE,
    packQuantity: 'pack, pack qty, packing quantity, box quantity, box qty, qty per pack, quantity per pack, package quantity',
  },
  crimps: {
    hose: HOSE,
    fitting: FITTING,
    ferrule: 'sleeve, shell, collar, socket, ferrule no, ferrule part no',
    die: DIE,
    dial: DIAL,
    crimpDiameter:
      'crimp od, crimp dia, crimp size, crimp, crimped diameter, crimped od, crimp outside diameter, final diameter, target, target diameter, swage diameter, nominal crimp diameter',
    tolerance: 'tol, crimp tolerance, tolerance +, tolerance ±, ±, +, crimp tol',
    smallestDiameter:
      'min crimp diameter, crimp diameter min, min diameter, crimp od min, min crimp od, minimum crimp diameter, min crimp dia, crimp dia min, smallest crimp diameter, min dia',
    largestDiameter:
      'max crimp diameter, crimp diameter max, max diameter, crimp od max, max crimp od, maximum crimp diameter, max crimp dia, crimp dia max, largest crimp diameter, max dia',
    largestSpread: 'ovality, max ovality, out of round, roundness, spread, max spread',
    crimpLength: 'length of crimp, crimp len, crimped length',
    skiveOutside: 'outside skive, external skive, outer skive, skive, skive length, ext skive, skive od, skive external',
    skiveInside: 'inside skive, internal skive, inner skive, int skive, skive id, skive internal',
    insertionDepth: DEPTH,
    note: NOTE,
  },
  machines: {
    machine: 'crimper, press, crimped on, crimping machine, machine no',
    die: DIE,
    hose: HOSE,
    fitting: FITTING,
    dial: DIAL,
    step: 'change per digit, per digit, mm per digit, step per digit',
    perTurn: 'change per turn, per screw turn, mm per turn',
    lowest: 'lowest dial, min dial, dial min, minimum dial',
    highest: 'highest dial, max dial, dial max, maximum dial',
    largestMove: 'max move, largest change',
    date: 'recorded, recorded on, day, last set',
    by: 'recorded by, set by, who, initials',
    note: NOTE,
  },
  rates: { rate: 'name, item, rate name', value: 'amount, number', note: NOTE },
  dies: {
    die: DIE,
    smallest: 'min, min diameter, minimum diameter, closed, closed diameter, from, smallest diameter, min crimp diameter',
    largest: 'max, max diameter, maximum diameter, open, open diameter, to, largest diameter, max crimp diameter',
    length: 'die length, jaw length',
    checked: 'last checked, inspected, last inspection',
  },
  guards: {
    guard: `sleeve, spiral guard, protection, cover, guard type, ${PART}`,
    size: SIZE,
    insideDiameter: BORE.replace('bore diameter, bore dia, nominal bore', 'bore'),
    pricePerLength: LENGTH_PRICE,
  },
  derating: {
    hose: HOSE,
    temperature: 'temp, at temperature, degrees',
    factor: 'derating factor, multiplier, share, pressure factor',
    note: NOTE,
  },
  fluids: {
    fluid: 'medium, media, fluid name, liquid, name',
    alsoCalled: 'aka, synonyms, other names, alias, aliases, also known as',
    hose: HOSE,
    coldest: COLDEST,
    hottest: HOTTEST,
    note: NOTE,
  },
} as const satisfies Record<TableName, Words>;
