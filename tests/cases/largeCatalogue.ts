/** The tables of an invented catalogue with a crimp row for every pair: one block a table, as a host hands them over. */
export function largeCatalogue(hoseCount: number, fittingCount: number) {
  const hoses = [
    ['Hose', 'Family', 'Size', 'Bore (mm)', 'Working pressure (bar)', 'Mass per length (kg/m)', 'Price per length (per m)'],
    ...Array.from({ length: hoseCount }, (_, i) => [`Alder hose ${i}`, 'Alder', 'DN 25', 25.4, 250, 1.1, 12.5]),
  ];
  const fittings = [
    [
      'Fitting',
      'Family',
      'End form',
      'Size',
      'Bore (mm)',
      'Cut-off (mm)',
      'Insertion depth (mm)',
      'Working pressure (bar)',
      'Mass (kg)',
      'Price',
    ],
    ...Array.from({ length: fittingCount }, (_, i) => [`Alder cone ${i}`, 'Alder', '24° cone', 'DN 25', 25.4, 30.5, 26, 250, 0.3, 9.5]),
  ];
  const crimps = [
    [
      'Hose',
      'Fitting',
      'Ferrule',
      'Die',
      'Dial',
      'Crimp diameter (mm)',
      'Tolerance (mm)',
      'Largest spread (mm)',
      'Crimp length (mm)',
      'Skive outside (mm)',
      'Skive inside (mm)',
      'Insertion depth (mm)',
      'Note',
    ],
    ...Array.from({ length: hoseCount * fittingCount }, (_, i) => {
      const fitting = i % fittingCount;
      const name = fitting < 10 ? `Alder cone ${fitting}*` : `Alder cone ${fitting}`;
      return [
        `Alder hose ${Math.floor(i / fittingCount)}`,
        name,
        null,
        'D38',
        200 + (i % 99),
        38 + (i % 100) / 100,
        0.15,
        0.2,
        40,
        0,
        0,
        26,
        'invented',
      ];
    }),
  ];
  
  const rates = [
    ['Rate', 'Value'],
    ['labour per hour', 58],
    ['minutes per cut', 2.5],
    ['minutes per crimp', 3],
    ['set-up minutes', 12],
    ['scrap fraction', 0.04],
    ['shortest free hose', 120],
  ];
  return { hoses, fittings, crimps, rates };
}
