import { recalculate } from '../../../src/preview/headless/recalculate';
import { builtFunctions } from '../builtFunctions';
import { stored, workshopFile } from '../workshopFile';

const functions = builtFunctions();
const at = async (file: Uint8Array, address: string) =>
  (await recalculate(file, functions)).find(cell => cell.address === address && cell.sheet === 'Jobs')!;

describe('recalculating a file without Excel', () => {
  it('gives the cut length of NAVEDTRA 14018 table 5-2 (16.5 in with two ends of .94 gives 14.62 in)', async () => {
    const cell = await at(await workshopFile(), 'D2');
    expect(cell).toEqual({
      sheet: 'Jobs',
      address: 'D2',
      formula: '=HOSE.CUTLENGTH(A2,B2,C2)',
      cached: 14.62,
      value: 14.62,
    });
  });

  it('finds a value in the file that the functions do not give', async () => {
    const file = await workshopFile(workbook => {
      workbook.getWorksheet('Jobs')!.getCell('D2').value = stored('_xldudf_HOSE_CUTLENGTH(A2,B2,C2)', 15, 'D2');
    });
    expect(await at(file, 'D2')).toMatchObject({ cached: 15, value: 14.62 });
  });

  it('spills a column of results, takes defined names, and keeps the sentence of the bad row', async () => {
    const cells = await recalculate(await workshopFile(), functions);
    expect(cells.find(cell => cell.address === 'D4')).toMatchObject({ value: 19 - 1 });
    expect(cells.find(cell => cell.address === 'D5')).toMatchObject({
      filledFrom: 'D4',
      cached: '#VALUE!',
      value: { error: '#VALUE!', sentence: expect.stringContaining('"twenty"') },
    });
  });

  it('calculates ordinary formulas that depend on ours', async () => {
    expect(await at(await workshopFile(), 'F2')).toMatchObject({ formula: '=D2*2', value: 29.24 });
  });

  it('shows #NAME? with a sentence for functions it does not have, and calculates the rest', async () => {
    const file = await workshopFile(workbook => {
      workbook.getWorksheet('Jobs')!.getCell('F3').value = { formula: 'NOSUCHFUNCTION(A2)', result: 7 };
    });
    expect(await at(file, 'F3')).toMatchObject({
      cached: 7,
      value: { error: '#NAME?', sentence: expect.stringMatching(/does not have/) },
    });
    expect(await at(file, 'D2')).toMatchObject({ value: 14.62 });
  });

  it('says how many arguments a function takes where the number is wrong', async () => {
    const file = await workshopFile(workbook => {
      workbook.getWorksheet('Jobs')!.getCell('F3').value = stored('_xldudf_HOSE_CUTLENGTH(A2)', 0, 'F3');
    });
    const { value } = await at(file, 'F3');
    expect(value).toMatchObject({ error: '#VALUE!', sentence: expect.stringMatching(/takes 3 to 4 arguments .*1 came/) });
  });
});
