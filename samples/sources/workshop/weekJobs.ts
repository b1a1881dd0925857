/** A job line as somebody typed it: the columns from the assembly's number to the note. */
export interface WeekJob {
  readonly wantedFor: string;
  readonly hose: string;
  readonly couplingA?: string;
  readonly couplingB?: string;
  readonly quantity: number;
  /** In mm; a text or a date where somebody typed one. */
  readonly overall: number | string | Date;
  /** Hottest temperature in use, °C. */
  readonly hottest?: number;
  readonly fluid?: string;
  readonly crimper?: string;
  /** Day of October 2026. */
  readonly due: number;
  readonly status?: string;
  /** Typed over the formula, in mm. */
  readonly cutLength?: number;
  readonly note?: string;
}

const GATE = 'Machine at the gate';
const oil = { fluid: 'HLP 46', crimper: GATE } as const;

/** Lines that can be made this week. */
const ready: readonly WeekJob[] = [
  {
    wantedFor: 'Harvester 3, topper lift',
    hose: 'Larch DN 12',
    couplingA: 'Larch 24° cone S straight DN 12',
    couplingB: 'Larch 24° cone S 90° DN 12',
    quantity: 4,
    overall: 1250,
    due: 20,
    ...oil,
  },
  {
    wantedFor: 'Haul tractor 2, steering',
    hose: 'Larch DN 10',
    couplingA: 'Larch 24° cone S straight DN 10',
    couplingB: 'Larch 24° cone S straight DN 10',
    quantity: 5,
    overall: 740,
    due: 20,
    ...oil,
  },
  {
    wantedFor: 'Cleaning loader, boom',
    hose: 'Rowan DN 19',
    couplingA: 'Rowan 24° cone S straight DN 19',
    couplingB: 'Rowan 24° cone S straight DN 19',
    quantity: 1,
    overall: 3400,
    due: 21,
    ...oil,
  },
  {
    wantedFor: 'Cleaning loader, pick-up lift',
    hose: 'Larch DN 16',
    couplingA: 'Larch 24° cone L straight DN 16',
    couplingB: 'Larch 24° cone L 45° DN 16',
    quantity: 4,
    overall: 1120,
    due: 21,
    ...oil,
  },
  {
    wantedFor: 'Cleaning loader, oil cooler',
    hose: 'Larch compact DN 12',
    couplingA: 'Larch 24° cone L straight DN 12',
    couplingB: 'Larch 24° cone L straight DN 12',
    quantity: 2,
    overall: 960,
    hottest: 80,
    due: 22,
    note: 'hot return line: the rating is derated',
    ...oil,
  },
  {
    wantedFor: 'Beet washer, pump suction',
    hose: 'Willow suction DN 31',
    couplingA: 'Willow 60° cone straight DN 31',
    couplingB: 'Willow 60° cone 90° DN 31',
    quantity: 1,
    overall: 900,
    due: 22,
    ...oil,
  },
  {
    wantedFor: 'Haul trailer 5, tipping ram',
    hose: 'Alder DN 16',
    couplingA: 'Alder 24° cone L 45° DN 16',
    couplingB: 'Alder 24° cone L straight DN 16',
    quantity: 2,
    overall: 2150,
    due: 23,
    ...oil,
  },
  { wantedFor: 'Yard, drain of the wash bay', hose: 'Larch DN 10', quantity: 1, overall: 2500, due: 23, note: 'hose alone' },
];

/** One line for each reason not to make it. */
const stops: readonly WeekJob[] = [
  {
    wantedFor: 'Harvester 3, sensor block',
    hose: 'Larch DN 12',
    couplingA: 'Larch 24° cone S straight DN 12',
    couplingB: 'Larch 24° cone S straight DN 12',
    quantity: 2,
    overall: 200,
    due: 21,
    note: 'too short for its couplings',
    ...oil,
  },
  {
    wantedFor: 'Harvester 1, fan drive',
    hose: 'Larch DN 16',
    couplingA: 'Alder 24° cone L straight DN 16',
    couplingB: 'Larch 24° cone L straight DN 16',
    quantity: 1,
    overall: 1480,
    due: 21,
    note: 'coupling of another family',
    ...oil,
  },
  {
    wantedFor: 'Harvester 1, fan return',
    hose: 'Larch DN 16',
    couplingA: 'Larch 24° cone L straight DN 19',
    couplingB: 'Larch 24° cone L straight DN 16',
    quantity: 1,
    overall: 1300,
    due: 21,
    note: 'coupling of another size',
    ...oil,
  },
  {
    wantedFor: 'Haul tractor 1, brake',
    hose: 'Larch DN 13',
    couplingA: 'Larch 24° cone S straight DN 12',
    couplingB: 'Larch 24° cone S straight DN 12',
    quantity: 2,
    overall: 640,
    due: 21,
    note: 'no such hose',
    ...oil,
  },
  {
    wantedFor: 'Grain drier, burner',
    hose: 'Alder DN 12',
    couplingA: 'Alder 24° cone L straight DN 12',
    couplingB: 'Alder 24° cone L straight DN 12',
    quantity: 1,
    overall: 1500,
    hottest: 115,
    due: 22,
    note: 'hotter than the hose allows',
    ...oil,
  },
  {
    wantedFor: 'Beet washer, agitator',
    hose: 'Larch DN 12',
    couplingA: 'Larch 24° cone S straight DN 12',
    couplingB: 'Larch 24° cone S straight DN 12',
    quantity: 1,
    overall: 1100,
    hottest: 85,
    fluid: 'HFC',
    crimper: GATE,
    due: 22,
    note: 'hotter than that fluid may be',
  },
  {
    wantedFor: 'Beet cart 2, gate',
    hose: 'Larch DN 10',
    couplingA: 'Larch 24° cone S straight DN 10',
    couplingB: 'Larch 24° cone S 90° DN 10',
    quantity: 2,
    overall: new Date(Date.UTC(2026, 9, 12)),
    due: 22,
    note: '10/12 was typed, and the sheet made a date of it',
    ...oil,
  },
  {
    wantedFor: 'Beet cart 2, belt',
    hose: 'Larch DN 10',
    couplingA: 'Larch 24° cone S straight DN 10',
    couplingB: 'Larch 24° cone S straight DN 10',
    quantity: 2,
    overall: 'about a metre',
    due: 22,
    note: 'no number',
    ...oil,
  },
  {
    wantedFor: 'Haul trailer 4, tail lift',
    hose: 'Larch DN 12',
    couplingA: 'Larch 24° cone S straight DN 12',
    couplingB: 'Larch 24° cone S straight DN 12',
    quantity: 1,
    overall: 1800,
    cutLength: 1800,
    due: 23,
    note: 'the overall length was typed as the cut length',
    ...oil,
  },
];

/** Lines with which the week began. */
const begun: readonly WeekJob[] = [
  {
    wantedFor: 'Harvester 2, lift of the turbine',
    hose: 'Larch DN 12',
    couplingA: 'Larch 24° cone S straight DN 12',
    couplingB: 'Larch 24° cone S straight DN 12',
    quantity: 2,
    overall: 1480,
    due: 19,
    status: 'done',
    ...oil,
  },
  {
    wantedFor: 'Sprayer, boom fold',
    hose: 'Larch DN 10',
    couplingA: 'Larch 24° cone S straight DN 10',
    couplingB: 'Larch 24° cone S straight DN 10',
    quantity: 2,
    overall: 1980,
    due: 26,
    status: 'on hold',
    note: 'waits for the farmer',
    ...oil,
  },
];

/** The job list of the week. */
export const weekJobs: readonly WeekJob[] = [...begun.slice(0, 1), ...ready, ...stops, ...begun.slice(1)];
