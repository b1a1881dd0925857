import type { Batch } from './batch';
import { guarded } from './guarded';

/** Names as people have them: of one range, of a number, of a copied sheet, of whole columns, of formulas and other files. */
const DEFINED = [
  { name: 'Catalogue', type: 'Range', formula: '=Jobs!$B$1' },
  { name: 'Rate', type: 'Double', formula: '=0.2' },
  { name: 'Copied', type: 'Range', formula: "='Parts (2), o''clock'!$A$1:$C$9" },
  { name: 'Columns', type: 'Range', formula: '=Jobs!$A:$B' },
  { name: 'Grown', type: 'Range', formula: '=OFFSET(Jobs!$A$1,0,0,2,2)' },
  { name: 'Through', type: 'Range', formula: "='Jobs:Empty'!$A$1" },
  { name: 'Elsewhere', type: 'Range', formula: "='[other.xlsx]Jobs'!$A$1" },
];

const formulaOf = (name: string) => DEFINED.find(item => item.name === name)?.formula;

/** The defined names of the workbook; only `Catalogue` and those that were added are found by name. */
export function namesOf({ pending, written, note }: Batch): object {
  const isKnown = (name: string) => name === 'Catalogue' || written.includes(`name ${name}`);
  return guarded(pending, () => ({ items: DEFINED }), {
    add: (name: string) => note(`name ${name}`),
    getItemOrNullObject: (name: string) =>
      guarded(pending, () => (isKnown(name) ? { name, formula: formulaOf(name) } : undefined), {
        delete: () => note(`delete name ${name}`),
      }),
    getItem: (name: string) => ({
      set formula(formula: string) {
        note(`name ${name} ${formula}`);
      },
    }),
  });
}
