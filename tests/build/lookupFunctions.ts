/** A function that takes a catalogue and rows: arguments of one good row, values for the whole call behind them, and its answer by hand. */
export interface LookupFunction {
  readonly id: string;
  readonly rows: readonly unknown[];
  readonly whole: readonly unknown[];
  readonly answer: readonly unknown[];
}

const [hose, straight, elbow] = ['Alder DN 12', 'Alder cone straight DN 12', 'Alder cone elbow DN 12'];
const close = (value: number) => expect.closeTo(value, 9);

/** The functions that take a catalogue and rows. */
export const lookupFunctions: readonly LookupFunction[] = [
  { id: 'HOSEDATA', rows: ['alder dn 12 '], whole: ['bend-RADIUS'], answer: [180] },
  { id: 'FITTINGDATA', rows: [elbow], whole: ['Cut off'], answer: [45.5] },
  { id: 'CRIMPSETUP', rows: [hose, straight], whole: [], answer: ['D23', 320, 23.5, 0.15, 26, 'CATALOGUE'] },
  // Its own record of the newest date.
  { id: 'TRIALDIAL', rows: [hose, straight, 'Bench 1'], whole: [], answer: [318, '', '', 1, 'RECORD'] },
  // 1200 − 30 − 45.5; the fittings' 250 bar; 1.1245 × .5 + .1 + .2.
  { id: 'ASSEMBLY', rows: [hose, straight, elbow, 1200], whole: [], answer: [1124.5, 250, close(0.86225), 'OK'] },
  // 960 mm of 8 a metre with 4 % scrap; 4 + 9; 30 ÷ 10 + 2 + 2 × 1.5 minutes of 1.
  { id: 'UNITCOST', rows: [hose, straight, elbow, 1035.5, 10], whole: [], answer: [8, 13, 8, 29] },
];
