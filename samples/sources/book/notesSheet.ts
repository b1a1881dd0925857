import type { Workbook } from 'exceljs';
import { putTitle } from './looks';
import { INVENTED, setUpSheet } from './printSetup';

const NOTES = [
  'Everything here is made up: the workshop of a beet-harvesting contractor, its machines, hoses, couplings, cut-offs, dies, dials, readings and prices. Hose families are named after trees. Nothing may be cut or crimped from it.',
  'Shaded columns hold worksheet functions (HOSE.…). They need the Benchrow add-in. Excel without it shows the values they had when the file was made; other spreadsheet programs show #NAME?.',
  'Never pass this workbook on to somebody who has no Benchrow: pass on a copy. The pane makes one under “Copy without Benchrow” (in the strip at the bottom and in Quote), as values or with formulas that every program calculates.',
  'If a cell shows #NAME?, the add-in was not loaded when the file opened: load it, then use the button in its pane.',
  'Inches are typed as text (27 1/2, 4\' 3 1/2", 42.25): format such columns as text first, or the sheet turns 3/8 into a date.',
  'Values of DIN, EN and SAE standards are recalled from memory: compare with your own copy.',
  'Do not mix hose, couplings and machines of different makers unless the makers approve it in writing. Their current data come first.',
  'The weakest part sets the pressure rating of an assembly, pressure peaks included.',
  'Proof-test with liquid, air bled, behind a shield. Never feel for a leak by hand: an injection wound is an emergency even if it looks small.',
  'A new dial setting is tried on one trial piece first. Do not crimp again what is out of spec unless the maker allows it: scrap it.',
  'Keep hands and loose parts out of the crimper; lock it out before changing dies.',
  'Local law, codes and a qualified person decide; this workbook does not replace training.',
];

/** Adds the sheet that says what a sample is, how to use it, and the usual cautions. */
export function addNotes(book: Workbook, purpose: string): void {
  const sheet = book.addWorksheet('Read first');
  sheet.getColumn(1).width = 5;
  sheet.getColumn(2).width = 112;
  putTitle(sheet, 'About this workbook', `A sample of Benchrow. ${purpose}`, `${INVENTED}.`);
  NOTES.forEach((note, index) => {
    const [number, text] = [sheet.getCell(5 + index, 1), sheet.getCell(5 + index, 2)];
    number.value = index + 1;
    text.value = note;
    number.alignment = { vertical: 'top', horizontal: 'center' };
    text.alignment = { vertical: 'top', wrapText: true };
    if (note.length > 110) sheet.getRow(5 + index).height = 31;
  });
  setUpSheet(sheet, 3, 0);
}
