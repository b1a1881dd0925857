import {
  Accordion,
  AccordionHeader,
  AccordionItem,
  AccordionPanel,
  Field,
  makeStyles,
  Select,
  Subtitle2,
  tokens,
} from '@fluentui/react-components';
import { catalogueTables, TABLE_NAMES, type TableName } from '../../core/catalogue/tables/catalogueTables';
import type { LoadedTable } from '../../sheets/parts/loadedTable';
import { countedText } from '../../core/countedText';

const useStyles = makeStyles({
  list: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  field: { overflowWrap: 'anywhere' },
});

const tableLabel = (table: LoadedTable) => {
  const rows = Math.max(0, table.raw.length - 1);
  return `${table.label} (${countedText(rows, 'row')})`;
};

interface Props {
  readonly tables: readonly LoadedTable[];
  readonly taken: ReadonlyMap<string, TableName>;
  readonly onTake: (id: string, table: TableName | undefined) => void;
}

function Choices({ tables, taken, onTake }: Props) {
  const styles = useStyles();
  return tables.map(table => (
    <Field key={table.id} className={styles.field} label={tableLabel(table)} size="small">
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
  ));
}

/** The tables that were loaded, and which of the catalogue's each one is; sheets that look like none are folded away. */
export function TableList({ tables, taken, onTake }: Props) {
  const styles = useStyles();
  if (tables.length === 0) return null;
  const isOdd = ({ id, guess, isFile }: LoadedTable) => guess === undefined && !isFile && !taken.has(id);
  const odd = tables.filter(isOdd);
  const used = tables.filter(table => !isOdd(table));
  const folds = used.length > 0 && odd.length > 0;
  return (
    <section className={styles.list} aria-label="Loaded tables">
      <Subtitle2 as="h2">Which table is what</Subtitle2>
      <Choices tables={folds ? used : tables} taken={taken} onTake={onTake} />
      {folds && (
        <Accordion collapsible>
          <AccordionItem value="odd">
            <AccordionHeader size="small" as="h3">
              {odd.length} other {odd.length === 1 ? 'table' : 'tables'}, not used
            </AccordionHeader>
            <AccordionPanel>
              <Choices tables={odd} taken={taken} onTake={onTake} />
            </AccordionPanel>
          </AccordionItem>
        </Accordion>
      )}
    </section>
  );
}
