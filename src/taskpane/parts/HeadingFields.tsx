import {
  Accordion,
  AccordionHeader,
  AccordionItem,
  AccordionPanel,
  Button,
  Caption1,
  Field,
  makeStyles,
  Select,
  tokens,
} from '@fluentui/react-components';
import { useState } from 'react';
import type { RawTable } from '../../core/catalogue/rawTable';
import type { TableSchema } from '../../core/catalogue/tableSchema';
import { catalogueTables, type TableName } from '../../core/catalogue/tables/catalogueTables';
import { columnLetters } from '../../workbook/a1';
import { headingFixes, headingText, missingFields, needsUnit, unitsOf, type HeadingFix } from '../../sheets/parts/headingFixes';
import type { ChosenTable, HeadingMaps } from '../../sheets/parts/loadedCatalogue';
import type { HeadingChange } from './rememberedHeadings';

const useStyles = makeStyles({
  fixes: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  pair: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalXS, '& > *': { flexGrow: 1, minWidth: '90px' } },
  field: { overflowWrap: 'anywhere' },
});

/** What is still to be said about a heading; a warning where it keeps the table from being read. */
function stateOf({ trouble, field, unit, column, isProposed }: HeadingFix, schema: TableSchema, rows: RawTable) {
  if (field === '') return { text: 'Kept in the sheet and not read', isWarning: false };
  if (unit === '' && needsUnit(schema.fields[field]!, rows, column)) {
    return { text: 'Its unit is missing or not known', isWarning: true };
  }
  if (trouble === 'unit' && unit === '') return { text: 'Its unit is not known', isWarning: true };
  if (trouble === 'twice') return { text: 'This heading stands twice', isWarning: true };
  return { text: isProposed ? 'Proposed: confirm or change it' : 'Mapped by hand', isWarning: false };
}

interface FixProps {
  readonly fix: HeadingFix;
  readonly schema: TableSchema;
  /** Rows below the headings. */
  readonly rows: RawTable;
  readonly letters: string;
  readonly onChange: (to: string) => void;
}

function Fix({ fix, schema, rows, letters, onChange }: FixProps) {
  const styles = useStyles();
  const { heading, trouble, field, unit, isProposed } = fix;
  const state = stateOf(fix, schema, rows);
  const units = schema.fields[field] ? unitsOf(schema.fields[field]) : [];
  const choose = (key: string) => {
    // A proposal comes back where nothing is said; so it is said that the heading is not used.
    if (key === '' && trouble === 'unknown' && !isProposed) return onChange('');
    const possible = schema.fields[key] ? unitsOf(schema.fields[key]) : [];
    onChange(headingText(schema, heading, key, possible.includes(unit) ? unit : ''));
  };
  return (
    <Field
      className={styles.field}
      size="small"
      label={`${letters}: ${heading}`}
      validationState={state.isWarning ? 'warning' : 'none'}
      validationMessage={state.text}
    >
      <div className={styles.pair}>
        <Select size="small" aria-label={`${heading} is`} value={field} onChange={(_, { value }) => choose(value)}>
          <option value="">not read</option>
          {Object.entries(schema.fields).map(([key, each]) => (
            <option key={key} value={key}>
              {each.heading}
              {each.required ? ' (required)' : ''}
            </option>
          ))}
        </Select>
        {units.length > 0 && (
          <Select
            size="small"
            aria-label={`Unit of ${heading}`}
            value={unit}
            onChange={(_, { value }) => onChange(headingText(schema, heading, field, value))}
          >
            <option value="">unit?</option>
            {units.map(each => (
              <option key={each}>{each}</option>
            ))}
          </Select>
        )}
      </div>
    </Field>
  );
}

interface ConfirmProps {
  readonly fixes: readonly HeadingFix[];
  readonly schema: TableSchema;
  readonly onMap: (changes: readonly HeadingChange[]) => void;
}

/** One press confirms what is proposed, once somebody has looked at it. */
function Confirm({ fixes, schema, onMap }: ConfirmProps) {
  const proposed = fixes.filter(({ isProposed }) => isProposed);
  if (proposed.length === 0) return null;
  return (
    <Button
      size="small"
      onClick={() => onMap(proposed.map(({ heading, field, unit }) => [heading, headingText(schema, heading, field, unit)]))}
    >
      Confirm {proposed.length} proposed {proposed.length === 1 ? 'heading' : 'headings'}
    </Button>
  );
}

interface Props {
  readonly chosen: readonly ChosenTable[];
  readonly maps: HeadingMaps;
  readonly onMap: (table: TableName, changes: readonly HeadingChange[]) => void;
}

function countsOf(fixes: readonly HeadingFix[], missing: readonly string[]): string {
  const counts = [
    [missing.length, 'missing'],
    [fixes.filter(({ isProposed }) => isProposed).length, 'proposed'],
    [fixes.filter(({ field, isProposed }) => field !== '' && !isProposed).length, 'to look at'],
    [fixes.filter(({ field }) => field === '').length, 'not read'],
  ] as const;
  return counts.flatMap(([count, what]) => (count > 0 ? [`${count} ${what}`] : [])).join(', ');
}

/** Which items are open: each opens once it needs somebody, and then as it is clicked. */
function useOpenItems(urgent: readonly string[]): readonly [open: readonly string[], setOpen: (open: readonly string[]) => void] {
  const [open, setOpen] = useState(urgent);
  const [seen, setSeen] = useState(urgent);
  const news = urgent.filter(id => !seen.includes(id));
  if (news.length > 0) {
    setSeen([...seen, ...news]);
    setOpen([...open, ...news]);
  }
  return [open, setOpen];
}

/** Headings that are unknown or lack a unit, a table each, to be mapped by hand. */
export function HeadingFields({ chosen, maps, onMap }: Props) {
  const styles = useStyles();
  const open = chosen.flatMap(({ loaded, table }) => {
    const schema: TableSchema = catalogueTables[table];
    const map = maps.get(table) ?? new Map<string, string>();
    const headings = loaded.raw[0] ?? [];
    const fixes = headingFixes(schema, loaded.raw, map);
    const missing = missingFields(schema, headings, map);
    return fixes.length > 0 || missing.length > 0 ? [{ loaded, table, schema, fixes, missing }] : [];
  });
  const urgent = open.filter(
    ({ fixes, missing }) =>
      missing.length > 0 || fixes.some(({ trouble, unit, isProposed }) => isProposed || (trouble === 'unit' && unit === '')),
  );
  const [shown, setShown] = useOpenItems(urgent.map(({ loaded }) => loaded.id));
  if (open.length === 0) return null;
  return (
    <Accordion
      multiple
      collapsible
      openItems={[...shown]}
      onToggle={(_, { openItems }) => setShown(openItems as string[])}
      aria-label="Headings"
    >
      {open.map(({ loaded, table, schema, fixes, missing }) => (
        <AccordionItem key={loaded.id} value={loaded.id}>
          <AccordionHeader size="small" as="h3">
            Headings of {schema.sheet}: {countsOf(fixes, missing)}
          </AccordionHeader>
          <AccordionPanel>
            <div className={styles.fixes}>
              {missing.length > 0 && <Caption1>Still missing: {missing.join(', ')}. Say which heading it is.</Caption1>}
              <Confirm fixes={fixes} schema={schema} onMap={changes => onMap(table, changes)} />
              {fixes.map(fix => (
                <Fix
                  key={`${fix.column} ${fix.heading}`}
                  fix={fix}
                  schema={schema}
                  rows={loaded.raw.slice(1)}
                  letters={columnLetters(loaded.firstColumn + fix.column)}
                  onChange={to => onMap(table, [[fix.heading, to]])}
                />
              ))}
            </div>
          </AccordionPanel>
        </AccordionItem>
      ))}
    </Accordion>
  );
}
