import fc from 'fast-check';
import type { RawCell, RawTable } from '../../../src/core/catalogue/rawTable';
import { readCatalogue, type RawTables } from '../../../src/core/catalogue/readCatalogue';
import { problemSentence } from '../../../src/core/catalogue/problem';
import { treeTables, withCell, withRows } from './treeCatalogue';
import { treeFluids } from './treeFluids';

const handle = readCatalogue(treeTables).handle;
const sentences = (tables: RawTables) => readCatalogue(tables).problems.map(problemSentence);

/** The table with its columns in another order. */
const reordered = (table: RawTable, order: readonly number[]): RawTable => table.map(row => order.map(index => row[index]!));

describe('the handle', () => {
  test('does not depend on the order of columns', () => {
    const permutation = (table: RawTable) => {
      const columns = table[0]!.map((_, index) => index);
      return fc.shuffledSubarray(columns, { minLength: columns.length, maxLength: columns.length });
    };
    fc.assert(
      fc.property(permutation(treeTables.hoses), permutation(treeTables.crimps), (hoses, crimps) => {
        const tables = { ...treeTables, hoses: reordered(treeTables.hoses, hoses), crimps: reordered(treeTables.crimps, crimps) };
        expect(readCatalogue(tables).handle).toBe(handle);
      }),
      { numRuns: 50 },
    );
  });

  test('does not depend on unknown columns, blank columns, blank rows, outer blanks of texts, or case and hyphens of headings', () => {
    const more = (table: RawTable): RawTable => [
      ...table.map((row, index) => [index === 0 ? 'Shelf' : index, ...row, index === 0 ? 'Reel length (ft)' : '  ']),
      table[0]!.map(() => null),
    ];
    expect(readCatalogue({ ...treeTables, hoses: more(treeTables.hoses) }).handle).toBe(handle);
    expect(readCatalogue(withCell('hoses', 1, 'Family', '  Alder ')).handle).toBe(handle);
    expect(readCatalogue(withCell('fittings', 0, 'Cut-off (mm)', ' CUTOFF [ mm ]')).handle).toBe(handle);
    expect(readCatalogue(withCell('hoses', 1, 'Bore (mm)', ' 12.7 ')).handle).toBe(handle);
  });

  test('does not depend on the unit in which equal values were typed', () => {
    const hoses = treeTables.hoses.map((row, index) =>
      row.map((cell, column) => {
        if (row.length < 5 || column !== 4) return cell;
        return index === 0 ? 'Bore (in)' : Number(cell) / 25.4;
      }),
    );
    expect(readCatalogue({ ...treeTables, hoses }).handle).toBe(handle);
  });

  test('follows every known field and the order of rows', () => {
    const handles = new Set([handle]);
    const columns = treeTables.fittings[0]!.map(String);
    for (const heading of columns) {
      const before = treeTables.fittings[1]![columns.indexOf(heading)];
      handles.add(
        readCatalogue(withCell('fittings', 1, heading, typeof before === 'number' ? before + 1 : `${before} new`)).handle,
      );
    }
    handles.add(readCatalogue({ ...treeTables, rates: [treeTables.rates[0]!, ...treeTables.rates.slice(1).reverse()] }).handle);
    expect(handles.size).toBe(columns.length + 2);
  });

  test.each<[string, Partial<RawTables>]>([
    ['Fluids', { fluids: treeFluids }],
    [
      'Guards',
      {
        guards: [
          ['Guard', 'Size', 'Inside diameter (mm)', 'Price per length (per m)'],
          ['coil', 'DN 12', 22, 4],
        ],
      },
    ],
    [
      'Derating',
      {
        derating: [
          ['Hose', 'Temperature (°C)', 'Factor', 'Note'],
          ['Alder DN 25', 80, 0.9, 'invented'],
        ],
      },
    ],
  ])('follows every known field of %s', (_, given) => {
    const [[name, table]] = Object.entries(given) as [[keyof RawTables, RawTable]];
    const handles = new Set([handle, readCatalogue({ ...treeTables, ...given }).handle]);
    table[0]!.forEach((_heading, column) => {
      const changed = table.map((row, at) =>
        row.map((cell, c) => (at !== 1 || c !== column ? cell : typeof cell === 'number' ? cell / 2 : `${cell ?? ''} new`)),
      );
      const blanked = table.map((row, at) => row.map((cell, c) => (at === 1 && c === column ? null : cell)));
      handles.add(readCatalogue({ ...treeTables, [name]: changed }).handle);
      if (table[1]![column] !== null) handles.add(readCatalogue({ ...treeTables, [name]: blanked }).handle);
    });
    const filled = table[1]!.filter(cell => cell !== null).length;
    expect(handles.size).toBe(2 + table[0]!.length + filled);
  });

  test('follows what a bad row holds', () => {
    const [a, b] = ['wide', 'wider'].map(text => readCatalogue(withCell('hoses', 1, 'Bore (mm)', text)).handle);
    expect(a).not.toBe(b);
  });

  test('prints the units that are not the usual companions', () => {
    const inches = withCell('hoses', 0, 'Hottest (°C)', 'Hottest (°F)');
    expect(readCatalogue(inches).handle).toMatch(/\(mm, bar, °F; /);
    const crimps = treeTables.crimps.map((row, index) =>
      row.map(cell => (index === 0 ? String(cell).replace(/^(Crimp|Tol)(.*)mm/, '$1$2in') : cell)),
    );
    expect(readCatalogue({ ...treeTables, crimps }).handle).toMatch(/\(mm, crimps in, bar; /);
  });
});

describe('units of the headings', () => {
  test('lengths become that of Cut-off, pressures that of Hoses, temperatures that of Hottest', () => {
    const hoses: RawTable = [
      [
        'Hose',
        'Family',
        'Bore (in)',
        'Working pressure (bar)',
        'Bend radius (cm)',
        'Coldest (°F)',
        'Hottest (°C)',
        'Shortens (%)',
      ],
      ['Alder', 'Alder', '1/2', 275, 18, -40, 100, 4],
    ];
    const fittings: RawTable = [
      ['Fitting', 'Family', 'End form', 'Bore (mm)', 'Cut-off (mm)', 'Insertion depth (in)', 'Working pressure (psi)'],
      ['Alder cone', 'Alder', '60° cone', 12.7, '1 1/2', 1, 1000],
    ];
    const {
      hoses: [hose],
      fittings: [fitting],
    } = readCatalogue({ ...treeTables, hoses, fittings });
    expect(hose).toMatchObject({ bore: 12.7, bendRadius: 180, coldest: -40, hottest: 100, shortens: 0.04 });
    // 1000 psi = 68.94757293168361 bar (NIST SP 811)
    expect(fitting).toMatchObject({ cutOff: 1.5, insertionDepth: 25.4, workingPressure: 68.9475729316836 });
  });
});

describe('a vacuum', () => {
  const without = withCell('hoses', 0, 'Vacuum (bar)', 'Vacuum').hoses!;
  const at = treeTables.hoses[0]!.indexOf('Vacuum (bar)');
  const filled = (cell: RawCell): RawTables => ({
    ...treeTables,
    hoses: without.map((row, index) => (index === 0 ? row : row.map((each, column) => (column === at ? cell : each)))),
  });

  test.each<[RawCell, 'yes' | 'no' | 0]>([
    ['yes', 'yes'],
    ['No', 'no'],
    [0, 0],
  ])('%s needs no unit', (cell, expected) => expect(readCatalogue(filled(cell)).hoses[0]!.vacuum).toBe(expected));

  test.each<RawCell>([0.8, '0.8', '-0.8'])('%s without one says that the hose stands a vacuum, not which', cell => {
    const catalogue = readCatalogue(filled(cell));
    expect([catalogue.hoses[0]!.vacuum, catalogue.problems]).toEqual(['yes', []]);
  });

  test.each(['Vacuum (inHg)', 'Vacuum (in. Hg)', 'Vacuum ("Hg)', 'Vacuum (inches of mercury)'])('%s is a unit', heading => {
    const [headings, ...rows] = filled(-20).hoses!;
    const hoses = [headings!.map(cell => (cell === 'Vacuum' ? heading : cell)), ...rows];
    // NIST SP 811, B.8: conventional inch of mercury 3.386389 kPa.
    expect(readCatalogue({ ...treeTables, hoses }).hoses[0]!.vacuum).toBeCloseTo((20 * 3.386389) / 100, 12);
  });
});

describe('problems', () => {
  test.each<[string, RawTables, string]>([
    [
      'a text for a number',
      withCell('fittings', 2, 'Price', 'ask'),
      'Fittings row 3: Price is "ask", expected a number, not less than 0',
    ],
    [
      'a blank required cell',
      withCell('fittings', 2, 'Cut-off (mm)', ' '),
      'Fittings row 3: Cut-off is blank, expected a number in mm',
    ],
    [
      'inches in millimetres',
      withCell('fittings', 2, 'Cut-off (mm)', '1 1/2"'),
      'Fittings row 3: Cut-off is "1 1/2"", expected a number in mm',
    ],
    [
      'a comma that may mean decimals or thousands',
      withCell('fittings', 2, 'Cut-off (mm)', '1,250'),
      'Fittings row 3: Cut-off is "1,250", expected a number in mm (its comma may mean decimals or thousands; write 1.250 or 1250)',
    ],
    [
      'a date for a cut-off',
      withCell('fittings', 2, 'Cut-off (mm)', 45_000),
      'Fittings row 3: Cut-off is 45000, expected a number in mm (that looks like a date; format the cell as text and type the fraction again)',
    ],
    ['a bore of 0', withCell('hoses', 2, 'Bore (mm)', 0), 'Hoses row 3: Bore is 0, expected a number in mm, more than 0'],
    [
      'a text for inches',
      {
        ...treeTables,
        hoses: withCell('hoses', 0, 'Bore (mm)', 'Bore (in)').hoses!.map((row, index) =>
          index === 2 ? row.map((cell, column) => (column === treeTables.hoses[0]!.indexOf('Bore (mm)') ? 'wide' : cell)) : row,
        ),
      },
      'Hoses row 3: Bore is "wide", expected a number in inches, more than 0',
    ],
    [
      'TRUE for a number',
      withCell('hoses', 2, 'Bore (mm)', true),
      'Hoses row 3: Bore is TRUE, expected a number in mm, more than 0',
    ],
    [
      'a bare pattern',
      withCell('crimps', 1, 'Fitting', '*'),
      'Crimps row 2: Fitting is "*", expected a part, or the beginning of its name and *',
    ],
    [
      'a pattern with its star in the middle',
      withCell('crimps', 1, 'Fitting', 'Alder * DN 12'),
      'Crimps row 2: Fitting is "Alder * DN 12", expected a part, or the beginning of its name and *',
    ],
    [
      'a setting recorded for a bare pattern',
      withCell('machines', 3, 'Fitting', ' * '),
      'Machines row 4: Fitting is "*", expected a part, or the beginning of its name and *',
    ],
    [
      'a tolerance of another target',
      withCell('crimps', 1, 'Tolerance (mm)', 5),
      'Crimps row 2: Tolerance is 5, expected between 1/2000 and 1/10 of the crimp diameter 23.4',
    ],
    [
      'limits upside down',
      withCell('crimps', 3, 'Smallest diameter (mm)', 24),
      'Crimps row 4: Smallest diameter is 24, expected no more than the largest, 23.75',
    ],
    [
      'one limit that diameter and tolerance contradict',
      withCell('crimps', 1, 'Largest diameter (mm)', 23.5),
      'Crimps row 2: Largest diameter is 23.5, expected 23.55, as diameter and tolerance give it (or both limits)',
    ],
    [
      'a recorded setting without dial',
      withCell('machines', 3, 'Dial', null),
      'Machines row 4: Dial is blank, expected to be filled in, as the row records a setting',
    ],
    [
      'no date',
      withCell('machines', 3, 'Date', 'in spring'),
      'Machines row 4: Date is "in spring", expected a date, like 2025-03-14 or 2025-03-14 15:30',
    ],
    ['all scrap', withCell('rates', 5, 'Value', 1), 'Rates row 6: Value is 1, expected a fraction below 1 (4 % is 0.04)'],
    [
      'a length of free hose counted in something else',
      withCell('rates', 6, 'Rate', 'shortest free hose (in diameters)'),
      'Rates row 7: Rate is "shortest free hose (in diameters)", expected "shortest free hose" with a unit of length, or "shortest free hose in diameters" without brackets',
    ],
    [
      'a range of a fluid upside down',
      {
        ...treeTables,
        fluids: [
          ['Fluid', 'Coldest (°C)', 'Hottest (°C)'],
          ['HFC', 70, -20],
        ],
      },
      'Fluids row 2: Coldest is 70, expected no more than the hottest, -20',
    ],
    [
      'a fluid for a bare pattern of hoses',
      {
        ...treeTables,
        fluids: [
          ['Fluid', 'Hose', 'Hottest (°C)'],
          ['HFC', '*', 60],
        ],
      },
      'Fluids row 2: Hose is "*", expected a part, or the beginning of its name and *',
    ],
    [
      'a target outside its die',
      {
        ...treeTables,
        dies: [
          ['Die', 'Smallest (mm)', 'Largest (mm)'],
          ['d38', 38.5, 42],
        ],
      },
      'Crimps row 5: Crimp diameter is 38.4, expected within the range of its die, 38.5 … 42',
    ],
  ])('%s', (_, tables, expected) => {
    expect(sentences(tables)).toEqual([expected]);
    expect(readCatalogue(tables).leftOutRows).toBe(1);
  });

  test('all rows of a duplicate are left out, names being compared without case and outer blanks', () => {
    const again = treeTables.hoses[1]!.map((cell, index) => (index === 0 ? ' ALDER dn 12 ' : cell)) as RawCell[];
    expect(sentences(withRows('hoses', again))).toEqual([
      'Hoses row 2: Hose is the same as in row 6, expected one row only',
      'Hoses row 6: Hose is the same as in row 2, expected one row only',
    ]);
  });

  test('dates as serial number and as ISO text are the same day', () => {
    // 2024-03-05 is day 45356 of the sheet (1900 date system, as Excel's DATEVALUE gives it)
    const described = ['Bench 1', null, null, null, null, 0.04, 0.7, 100, 900] as const;
    const twice = withRows('machines', [...described, '2024-03-05', 'yes'], [...described, 45_356, 'yes']);
    expect(sentences(twice)).toHaveLength(2);
  });

  test('two recorded dials of one date are no duplicates', () => {
    expect(sentences(withCell('machines', 4, 'Date', 45_356))).toEqual([]);
  });

  test('one limit that says what diameter and tolerance say is none', () => {
    expect(sentences(withCell('crimps', 1, 'Largest diameter (mm)', 23.55))).toEqual([]);
    expect(sentences(withCell('crimps', 1, 'Smallest diameter (mm)', '23.25'))).toEqual([]);
  });

  test('the sample tables have none', () => expect(sentences(treeTables)).toEqual([]));
});
