import { sampleHoses } from './hoses';
import type { SampleTable } from './sampleTable';

export const ratesTable: SampleTable = {
  name: 'Rates',
  headings: ['Rate', 'Value', 'Note'],
  rows: [
    ['labour per hour', 58, 'invented'],
    ['minutes per cut', 2.5, 'one cut, marked and cleaned'],
    ['minutes per crimp', 3, 'one coupling, measured'],
    ['minutes per test', 6, 'one assembly, invented like all values here'],
    ['set-up minutes', 12, 'a batch: dies, dial, trial piece'],
    ['scrap fraction', 0.04, 'of the hose'],
    ['shortest free hose', 120, 'mm between the couplings'],
    ['minimum charge', 15, 'least sum of a quote’s lines'],
  ],
};

export const guardsTable: SampleTable = {
  name: 'Guards',
  headings: ['Guard', 'Size', 'Inside diameter (mm)', 'Price per length (per m)', 'Note'],
  rows: [
    ['spiral guard 16–20', 'DN 8', 20, 1.9, 'invented'],
    ['spiral guard 20–27', 'DN 12', 27, 2.6, 'invented'],
    ['spiral guard 27–36', 'DN 19', 36, 3.8, 'invented'],
    ['woven sleeve 30', 'DN 12', 30, 4.4, 'invented'],
    ['woven sleeve 42', 'DN 19', 42, 5.7, 'invented'],
    ['woven sleeve 60', 'DN 31', 60, 8.2, 'invented'],
  ],
};

/** Share of the working pressure that is left when hot; invented. */
export const deratingTable: SampleTable = {
  name: 'Derating',
  headings: ['Hose', 'Temperature (°C)', 'Factor', 'Note'],
  rows: sampleHoses
    .filter(({ name }) => name.includes('compact'))
    .flatMap(({ name }) => [
      [name, 60, 1, 'invented'],
      [name, 80, 0.95, 'invented'],
      [name, 100, 0.85, 'invented'],
    ]),
};

const WIRE_BRAID = 'range from memory of EN 853 and EN 856: check; other names of the fluid: common practice';

/** Other names of the fluids, and how cold and hot they may be in a hose. */
export const fluidsTable: SampleTable = {
  name: 'Fluids',
  headings: ['Fluid', 'Also called', 'Hose', 'Coldest (°C)', 'Hottest (°C)', 'Note'],
  rows: [
    ['mineral oil', 'HL; HLP; HLP 32; HLP 46; HLP 68', undefined, -40, 100, WIRE_BRAID],
    ['water-glycol', 'HFC; water glycol 46', undefined, -40, 70, WIRE_BRAID],
    ['rapeseed ester', 'HETG', undefined, -20, 80, 'range invented; other name: common practice'],
    ['water-glycol', undefined, 'Willow*', -20, 60, 'invented'],
  ],
};
