import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { Decimal } from '../../../src/core/units/decimal';
import { measureUnit } from '../../../src/core/units/measureUnit';
import { insertChoice } from '../../../src/sheets/duty/insertChoice';
import { treeTables } from '../../core/catalogue/treeCatalogue';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';

const millimetres = (value: number) => ({ value: new Decimal(value), unit: measureUnit('length', 'mm')! });
const [STRAIGHT, ELBOW] = ['Alder cone straight DN 12', 'Alder cone elbow DN 12'];

test('a table whose columns are known only by the names of the catalogue takes the row, as a quote takes its lines', async () => {
  const rows = [
    ['Bore type', 'First', 'Second', 'OAL (mm)', 'Qty'],
    ['Alder DN 12', STRAIGHT, ELBOW, 1250, 4],
  ];
  const { workbook } = fakeWorkbook({ Jobs: rows }, { sheet: 'Jobs', address: 'A2' });
  const content = {
    hose: 'Alder DN 12',
    fittingA: ELBOW,
    fittingB: ELBOW,
    quantity: 2,
    overall: millimetres(900),
    cutOffA: millimetres(60),
    cutOffB: millimetres(60),
  };
  expect(await insertChoice(workbook, content, readCatalogue(treeTables))).toContain('Wrote row 3 of sheet Jobs (A3:E3).');
  const { values } = (await workbook.used('Jobs'))!;
  expect(values[2]).toEqual(['Alder DN 12', ELBOW, ELBOW, 900, 2]);
});
