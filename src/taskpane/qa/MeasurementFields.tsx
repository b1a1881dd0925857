import { Caption1, Field, Input, makeStyles, Select, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import { columnLetters } from '../../workbook/a1';
import type { FoundTable } from '../../sheets/table/findTable';
import { columnListOf, columnListText } from '../../sheets/crimps/columnList';
import {
  LAYOUTS,
  MEASUREMENT_ROLES,
  ROLE_NAMES,
  ROLES_OF_B,
  type MeasurementColumns,
  type MeasurementLayout,
  type MeasurementRole,
} from '../../sheets/crimps/measurementRoles';

const useStyles = makeStyles({
  list: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS, minWidth: 0 },
  narrow: { minWidth: 0, width: '100%' },
});

interface Props {
  readonly table: FoundTable;
  readonly layout: MeasurementLayout;
  readonly columns: MeasurementColumns;
  readonly onLayout: (layout: MeasurementLayout) => void;
  readonly onColumns: (columns: MeasurementColumns) => void;
}

const OF_B: readonly MeasurementRole[] = Object.values(ROLES_OF_B);

/** Roles that mean something in a layout; with both ends in a row the plain ones are end A's. */
function rolesOf(layout: MeasurementLayout): MeasurementRole[] {
  const isShown = (role: MeasurementRole) => {
    if (OF_B.includes(role)) return layout === 'ends';
    if (role === 'readingNumber') return layout === 'column';
    return role !== 'end' || layout !== 'ends';
  };
  return ROLE_NAMES.filter(isShown);
}

function labelOf(role: MeasurementRole, layout: MeasurementLayout): string {
  const { label } = MEASUREMENT_ROLES[role];
  return layout === 'ends' && role in ROLES_OF_B ? `${label} A` : label;
}

interface ListProps {
  readonly label: string;
  readonly columns: readonly number[];
  readonly onChange: (columns: readonly number[]) => void;
}

/** Several columns as text; what is no list of columns is not taken. */
function ColumnList({ label, columns, onChange }: ListProps) {
  const styles = useStyles();
  const [typed, setTyped] = useState<string>();
  const isWrong = typed !== undefined && columnListOf(typed) === undefined;
  return (
    <Field
      label={label}
      size="small"
      hint="Columns, like F:I or F, H, J"
      validationState={isWrong ? 'error' : 'none'}
      validationMessage={isWrong ? 'Letters of columns, like F:I' : undefined}
    >
      <Input
        className={styles.narrow}
        size="small"
        value={typed ?? columnListText(columns)}
        onChange={(_, { value }) => {
          setTyped(value);
          const list = columnListOf(value);
          if (list) onChange(list);
        }}
        onBlur={() => setTyped(undefined)}
      />
    </Field>
  );
}

/** How the readings lie, and which column is what: proposed, and corrected by hand. */
export function MeasurementFields({ table, layout, columns, onLayout, onColumns }: Props) {
  const styles = useStyles();
  const set = (role: MeasurementRole, chosen: readonly number[]) => {
    const others = Object.entries(columns).filter(([each]) => each !== role);
    onColumns(Object.fromEntries(chosen.length > 0 ? [...others, [role, chosen]] : others));
  };
  return (
    <div className={styles.list}>
      <Caption1>Proposed from the headings and the content. Correct what is wrong.</Caption1>
      <Field label="How the readings lie" size="small">
        <Select size="small" value={layout} onChange={(_, { value }) => onLayout(value as MeasurementLayout)}>
          {(Object.keys(LAYOUTS) as MeasurementLayout[]).map(each => (
            <option key={each} value={each}>
              {LAYOUTS[each]}
            </option>
          ))}
        </Select>
      </Field>
      {rolesOf(layout).map(role =>
        role === 'readings' || role === 'readingsB' ? (
          <ColumnList
            key={role}
            label={labelOf(role, layout)}
            columns={columns[role] ?? []}
            onChange={chosen => set(role, chosen)}
          />
        ) : (
          <Field key={role} label={labelOf(role, layout)} size="small">
            <Select
              className={styles.narrow}
              size="small"
              value={String(columns[role]?.[0] ?? '')}
              onChange={(_, { value }) => set(role, value === '' ? [] : [Number(value)])}
            >
              <option value="">not in this table</option>
              {table.headings.map((heading, i) => (
                <option key={i} value={table.block.column + i}>
                  {columnLetters(table.block.column + i)}: {heading || 'no heading'}
                </option>
              ))}
            </Select>
          </Field>
        ),
      )}
    </div>
  );
}
