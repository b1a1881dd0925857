import { Field, makeStyles, Select, Subtitle2, tokens } from '@fluentui/react-components';
import { catalogueTables, TABLE_NAMES, type TableName } from '../../core/catalogue/tables/catalogueTables';
import type { LoadedTable } from './loadedTable';

const useStyles = makeStyles({
  list: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  field: { overflowWrap: 'anywhere' },
});

const rowsText = (table: LoadedTable) => {
  const rows = Math.max(0, table.raw.length - 1);
  return `${table.label} (${rows} ${rows === 1 ? 'row' : 'rows'})`;
};

interface Props {
  readonly tables: readonly LoadedTable[];
  readonly taken: ReadonlyMap<string, TableName>;
  readonly onTake: (id: string, table: TableName | undefined) => void;
}

/** The tables that were loaded, and which of the catalogue's each one is. */
export function TableList({ tables, taken, onTake }: Props) {
  const styles = useStyles();
  if (tables.length === 0) return null;
  return (
    <section className={styles.list} aria-label="Loaded tables">
      <Subtitle2 as="h2">Which table is what</Subtitle2>
      {tables.map(table => (
        <Field key={table.id} className={styles.field} label={rowsText(table)} size="small">
          <Select
            size="small"
            value={taken.get(table.id) ?? ''}
            onChange={(_, { value }) => onTake(table.id, value === '' ? undefined : (value as TableName))}
          >
            <option value="">not used</option>
            {TABLE_NAMES.map(name => (
              <option key={name} value={name}>
                {catalogueTables[name].sheet}
              </option>
            ))}
          </Select>
        </Field>
      ))}
    </section>
  );
}
