import type { RawCell, RawTable } from '../../../src/core/catalogue/rawTable';
import type { RawTables } from '../../../src/core/catalogue/readCatalogue';

/* A small catalogue of an invented workshop. All values are invented: never crimp from them. */

const hoses: RawTable = [
  [
    'Hose',
    'Family',
    'Standard',
    'Size',
    'Bore (mm)',
    'Working pressure (bar)',
    'Bend radius (mm)',
    'Coldest (°C)',
    'Hottest (°C)',
    'Vacuum (bar)',
    'Fluids',
    'Mass per length (kg/m)',
    'Price per length (per m)',
    'Note',
  ],
  ['Alder DN 12', 'Alder', 'EN 853 2SN', 'DN 12', 12.7, 275, 180, -40, 100, null, 'mineral oil, water glycol', 0.5, 8, null],
  ['Alder DN 25', 'Alder', 'EN 853 2SN', 'DN 25', 25.4, 165, 300, -40, 100, null, 'mineral oil, water glycol', 1.2, 16.5, null],
  ['Birch DN 25', 'Birch', 'EN 856 4SH', 'DN 25', 25.4, 380, 340, -40, 120, null, 'mineral oil (HL, HLP)', 2, 31, null],
  ['Willow DN 25', 'Willow', null, 'DN 25', 25.4, 20, 150, -40, 80, 0.8, 'mineral oil', 0.9, null, 'suction'],
];

const fittings: RawTable = [
  [
    'Fitting',
    'Family',
    'End form',
    'Thread',
    'Series',
    'Angle',
    'Size',
    'Bore (mm)',
    'Cut-off (mm)',
    'Insertion depth (mm)',
    'Working pressure (bar)',
    'Mass (kg)',
    'Price',
  ],
  ['Alder cone straight DN 12', 'Alder', '24° cone', 'M22x1.5', 'L', 0, 'DN 12', 12.7, 30, 26, 250, 0.1, 4],
  ['Alder cone elbow DN 12', 'Alder', '24° cone', 'M22x1.5', 'L', 90, 'DN 12', 12.7, 45.5, 26, 250, 0.2, 9],
  ['Alder flare straight DN 12', 'Alder', '37° flare swivel', null, null, 0, 'DN 12', 12.7, -3, 26, null, 0.15, 5],
  ['Alder cone straight DN 25', 'Alder', '24° cone', 'M36x2', 'S', 0, 'DN 25', 25.4, 40, 38, 250, 0.4, 11],
  ['Birch flange DN 25', 'Birch', 'split flange', null, 'S', 0, 'DN 25', 25.4, 60, 45, 400, 0.9, 24],
  ['Birch ferrule DN 25', 'Birch', 'ferrule', null, null, null, 'DN 25', 25.4, 0, null, null, 0.25, 6],
  ['Alder oddment', 'Alder', '24° cone', null, 'L', 45, null, 12.9, 33, null, 250, null, null],
];

const crimps: RawTable = [
  [
    'Hose',
    'Fitting',
    'Ferrule',
    'Die',
    'Dial',
    'Crimp diameter (mm)',
    'Tolerance (mm)',
    'Smallest diameter (mm)',
    'Largest diameter (mm)',
    'Insertion depth (mm)',
  ],
  ['Alder DN 12', 'Alder*', null, 'D23', 310, 23.4, 0.15, null, null, null],
  ['Alder DN 12', 'Alder cone*', null, 'D23', 320, 23.5, 0.15, null, null, null],
  ['Alder DN 12', 'Alder cone elbow DN 12', null, 'D23', 325, null, null, 23.45, 23.75, 27],
  ['Alder DN 25', 'Alder*', null, 'D38', 240, 38.4, 0.2, null, null, null],
  ['Birch DN 25', 'Birch flange DN 25', 'birch FERRULE dn 25', 'D40', 205, 40.2, 0.2, null, null, null],
];

const machines: RawTable = [
  ['Machine', 'Die', 'Hose', 'Fitting', 'Dial', 'Step (mm)', 'Per turn (mm)', 'Lowest', 'Highest', 'Date', 'Catalogue dials'],
  ['Bench 1', null, null, null, null, 0.04, 0.7, 100, 900, null, 'yes'],
  ['Bench 2', null, null, null, null, 0.05, 0.9, 100, 900, null, 'no'],
  ['Bench 1', 'D23', 'Alder DN 12', 'Alder cone straight DN 12', 316, null, null, null, null, '2024-03-05', null],
  ['Bench 1', 'D23', 'Alder DN 12', 'Alder cone straight DN 12', 318, null, null, null, null, 45_600, null],
  ['Bench 1', 'D24', 'Alder DN 12', 'Alder cone straight DN 12', 390, null, null, null, null, 45_700, null],
];

const rates: RawTable = [
  ['Rate', 'Value', 'Note'],
  ['labour per hour', 60, null],
  ['minutes per cut', 2, null],
  ['minutes per crimp', 1.5, null],
  ['set-up minutes', 30, null],
  ['scrap fraction', 0.04, null],
  ['shortest free hose (cm)', 10, null],
];

const derating: RawTable = [
  ['Hose', 'Temperature (°C)', 'Factor'],
  ['Alder DN 25', 60, 1],
  ['Alder DN 25', 80, 0.9],
  ['Alder DN 25', 100, 0.8],
];

export const treeTables: RawTables & {
  hoses: RawTable;
  fittings: RawTable;
  crimps: RawTable;
  machines: RawTable;
  rates: RawTable;
} = {
  hoses,
  fittings,
  crimps,
  machines,
  rates,
  derating,
};

/** The tables with one cell changed. */
export function withCell(table: keyof typeof treeTables, row: number, heading: string, value: RawCell): RawTables {
  const rows = treeTables[table]!;
  const column = rows[0]!.findIndex(cell => cell === heading);
  if (column < 0) throw new Error(`no heading ${heading}`);
  return { ...treeTables, [table]: rows.map((cells, r) => cells.map((cell, c) => (r === row && c === column ? value : cell))) };
}

/** The tables with more rows behind one of them. */
export function withRows(table: keyof typeof treeTables, ...rows: RawCell[][]): RawTables {
  return { ...treeTables, [table]: [...treeTables[table]!, ...rows] };
}

/** As CATALOGUE's arguments. */
export function cellsOf(tables: RawTables): (RawTable | null)[] {
  const { hoses, fittings, crimps, machines, rates, dies, guards, derating, fluids } = tables;
  return [hoses, fittings, crimps, machines, rates, dies, guards, derating, fluids].map(table => table ?? null);
}
