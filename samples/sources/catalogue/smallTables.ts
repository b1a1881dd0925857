import { sampleHoses } from './hoses';
import type { SampleTable } from './sampleTable';

export const ratesTable: SampleTable = {
  name: 'Rates',
  headings: ['Rate', 'Value', 'Note'],
  rows: [
    ['labour per hour', 58, 'invented'],
    ['minutes per cut', 2.5, 'one cut, marked and cleaned'],
    ['minutes per crimp', 3, 'one coupling, measured'],
    ['minutes per test', 6, 'one assembly'],
    ['set-up minutes', 12, 'a batch: dies, dial, trial piece'],
    ['scrap fraction', 0.04, 'of the hose'],
    ['shortest free hose', 120, 'mm between the couplings'],
    ['minimum charge', 15, 'an assembly'],
  ],
};

export const guardsTable: SampleTable = {
  name: 'Guards',
  headings: ['Guard', 'Size', 'Price per length (per m)'],
  rows: [
    ['spiral guard 16–20', 'DN 8', 1.9],
    ['spiral guard 20–27', 'DN 12', 2.6],
    ['spiral guard 27–36', 'DN 19', 3.8],
    ['woven sleeve 30', 'DN 12', 4.4],
    ['woven sleeve 42', 'DN 19', 5.7],
    ['woven sleeve 60', 'DN 31', 8.2],
  ],
};

/** Share of the working pressure that is left when hot; invented. */
export const deratingTable: SampleTable = {
  name: 'Derating',
  headings: ['Hose', 'Temperature (°C)', 'Factor'],
  rows: sampleHoses
    .filter(({ name }) => name.includes('compact'))
    .flatMap(({ name }) => [
      [name, 60, 1],
      [name, 80, 0.95],
      [name, 100, 0.85],
    ]),
};
