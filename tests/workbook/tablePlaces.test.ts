import { catalogueReferences } from '../../src/workbook/catalogueFormula';
import { tablePlaces } from '../../src/workbook/tablePlaces';
import type { HostTable } from '../../src/workbook/workbook';
import { fakeWorkbook } from './fakeWorkbook';

const HOSES: HostTable = { sheet: 'Hoses', address: 'A1:N8', name: 'tblHoses' };

// Structured references as Microsoft's "Using structured references with Excel tables" describes #All, #Data and a bare name.
test.each([
  ['tblHoses[#All]', HOSES, 'A1:N8'],
  ['tblHoses[#Data]', HOSES, 'A2:N8'],
  ['tblHoses[#All]', { ...HOSES, hasTotals: true }, 'A1:N9'],
  ['tblHoses[#Data]', { ...HOSES, hasTotals: true }, 'A2:N8'],
  ['TBLHOSES', { ...HOSES, hasTotals: true }, 'A2:N8'],
])('%s of a table (%o) is %s', async (reference, table, address) => {
  const { workbook } = fakeWorkbook({ Hoses: [['Hose']] }, { sheet: 'Hoses', address: 'A1' });
  const references = catalogueReferences(`=HOSE.CATALOGUE(${reference})`, 'Hoses')!;
  const places = await tablePlaces({ ...workbook, tables: async () => [table] }, references);
  expect(places).toEqual([{ sheet: 'Hoses', address }]);
});
