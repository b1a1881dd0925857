import { Field, Radio, RadioGroup } from '@fluentui/react-components';
import { MANY_ROWS, type FormulaForm } from '../../sheets/columns/formulaForm';

interface Props {
  readonly form: FormulaForm;
  readonly rows: number;
  readonly onChange: (form: FormulaForm) => void;
}

const LABELS: readonly (readonly [FormulaForm, string])[] = [
  ['row', 'One formula a row and function'],
  ['column', 'One formula a function for all rows'],
  ['cell', 'A formula in every cell'],
];

/** What each form is good for, and what it costs. */
const NOTES: Readonly<Record<FormulaForm, string>> = {
  row: 'It fills the columns beside it. Few calls, and rows can be added one by one.',
  column: 'It fills all rows. Fewest calls. Rows added later: press Fill. Do not sort the filled columns.',
  cell: 'Most calls. Choose it to sort by these columns, or to make an Excel table later.',
};

/** Why this form is proposed. */
function reasonOfForm(form: FormulaForm, rows: number): string {
  if (form !== 'column' || rows <= MANY_ROWS) return NOTES[form];
  return `${NOTES.column} Proposed above ${MANY_ROWS} rows: Excel waits for every call, and thousands can end in #BUSY!.`;
}

/** How many cells one formula fills. */
export function FormulaFormChoice({ form, rows, onChange }: Props) {
  return (
    <Field label="Formulas" hint={reasonOfForm(form, rows)}>
      <RadioGroup value={form} onChange={(_, { value }) => onChange(value as FormulaForm)}>
        {LABELS.map(([value, label]) => (
          <Radio key={value} value={value} label={label} />
        ))}
      </RadioGroup>
    </Field>
  );
}
