import { useState } from 'react';
import { Button, Caption1, Field, makeStyles, Select, Subtitle2, tokens } from '@fluentui/react-components';
import { columnLetters } from '../../workbook/a1';
import type { FoundTable } from '../../sheets/table/findTable';
import type { Columns } from '../../sheets/table/proposeColumns';
import { ROLES, type Role } from '../../sheets/table/roles';

const useStyles = makeStyles({ list: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS } });

const SHOWN: readonly Role[] = [
  'hose',
  'fittingA',
  'fittingB',
  'overall',
  'cutOffA',
  'cutOffB',
  'allowance',
  'quantity',
  'readings',
  'target',
  'tolerance',
  'dial',
  'step',
  'machine',
  'margin',
];

interface Props {
  readonly table: FoundTable;
  readonly columns: Columns;
  readonly onChange: (columns: Columns) => void;
}

/** One dropdown a role: which column of the table it is; the readings have a first and a last column. */
export function RoleFields({ table, columns, onChange }: Props) {
  const styles = useStyles();
  // Those that were found at first stay shown when they are taken away by hand.
  const [proposed] = useState(() => SHOWN.filter(role => columns[role]));
  const [all, setAll] = useState(proposed.length === 0);
  const shown = SHOWN.filter(role => all || columns[role] || proposed.includes(role));
  const options = table.headings.map((heading, i) => (
    <option key={i} value={table.block.column + i}>
      {columnLetters(table.block.column + i)}: {heading || 'no heading'}
    </option>
  ));
  const set = (role: Role, edge: 'first' | 'last' | 'both', value: string) => {
    const { [role]: old, ...rest } = columns;
    if (value === '') return onChange(rest);
    const column = Number(value);
    const span = edge === 'both' ? { first: column, last: column } : { first: column, last: column, ...old, [edge]: column };
    const ordered = { first: Math.min(span.first, span.last), last: Math.max(span.first, span.last) };
    // Checks take two readings or more: a block of one column is widened by its neighbour.
    if (role === 'readings' && ordered.first === ordered.last) {
      const right = table.block.column + table.block.columns - 1;
      if (ordered.last < right) ordered.last += 1;
      else ordered.first -= 1;
    }
    onChange({ ...rest, [role]: ordered });
  };
  const field = (role: Role, label: string, edge: 'first' | 'last' | 'both') => (
    <Field key={label} label={label} orientation="horizontal" size="small">
      <Select
        size="small"
        value={String(columns[role]?.[edge === 'last' ? 'last' : 'first'] ?? '')}
        onChange={(_, data) => set(role, edge, data.value)}
      >
        <option value="">not in this table</option>
        {options}
      </Select>
    </Field>
  );
  return (
    <section className={styles.list} aria-label="Which column is what">
      <Subtitle2 as="h2">Which column is what</Subtitle2>
      <Caption1>Proposed from the headings and the content. Correct what is wrong.</Caption1>
      {shown.flatMap(role =>
        role === 'readings'
          ? [field(role, 'Readings, first', 'first'), field(role, 'Readings, last', 'last')]
          : [field(role, ROLES[role].label, 'both')],
      )}
      {shown.length < SHOWN.length && (
        <Button size="small" onClick={() => setAll(true)}>
          Show the other {SHOWN.length - shown.length}
        </Button>
      )}
    </section>
  );
}
