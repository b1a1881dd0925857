import {
  Accordion,
  AccordionHeader,
  AccordionItem,
  AccordionPanel,
  Body1,
  Button,
  makeStyles,
  MessageBar,
  MessageBarBody,
  MessageBarTitle,
  Subtitle2,
  tokens,
} from '@fluentui/react-components';
import { useState } from 'react';
import type { RowChange } from '../../core/catalogue/catalogueDiff';
import { catalogueTables, TABLE_NAMES } from '../../core/catalogue/tables/catalogueTables';

const FIRST = 20;
const MORE = 200;

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalXS },
  list: { margin: 0, paddingLeft: tokens.spacingHorizontalL, overflowWrap: 'anywhere' },
});

const KINDS = ['added', 'changed', 'removed'] as const;
/** A converted number has more digits than anybody wrote. */
const DIGITS = 7;

function shown(value: string | number | undefined): string {
  if (value === undefined) return 'blank';
  return String(typeof value === 'number' ? Number(value.toPrecision(DIGITS)) : value);
}

/** `2 added, 1 changed`. */
function countsText(changes: readonly RowChange[]): string {
  return KINDS.flatMap(kind => {
    const count = changes.filter(change => change.kind === kind).length;
    return count > 0 ? [`${count} ${kind}`] : [];
  }).join(', ');
}

function rowText(change: RowChange): string {
  if (change.kind !== 'changed') return `${change.kind}: ${change.name}`;
  const fields = change.fields.map(({ heading, before, after, percent }) => {
    const rise = percent === undefined ? '' : ` (${percent > 0 ? '+' : ''}${percent} %)`;
    return `${heading} ${shown(before)} → ${shown(after)}${rise}`;
  });
  return `changed: ${change.name}: ${fields.join(', ')}`;
}

function Rows({ changes }: { readonly changes: readonly RowChange[] }) {
  const styles = useStyles();
  const [count, setCount] = useState(FIRST);
  const rest = changes.length - count;
  return (
    <>
      <ul className={styles.list}>
        {changes.slice(0, count).map((change, index) => (
          <li key={index}>{rowText(change)}</li>
        ))}
      </ul>
      {rest > 0 && (
        <Button size="small" appearance="transparent" onClick={() => setCount(count + MORE)}>
          Show {Math.min(rest, MORE)} more of {rest}
        </Button>
      )}
    </>
  );
}

interface Props {
  readonly changes: readonly RowChange[];
  readonly unitChange: string;
}

/** What a new catalogue adds, changes and removes, a table each. */
export function CompareView({ changes, unitChange }: Props) {
  const styles = useStyles();
  const tables = TABLE_NAMES.map(name => ({ name, rows: changes.filter(({ table }) => table === name) }));
  return (
    <section className={styles.view} aria-label="What changes">
      <Subtitle2 as="h2">What changes</Subtitle2>
      {unitChange !== '' && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>Units change</MessageBarTitle>
            {unitChange}. Numbers are converted before they are compared, and shown in the new units.
          </MessageBarBody>
        </MessageBar>
      )}
      {changes.length === 0 && <Body1>Nothing: the parts data are the same.</Body1>}
      <Accordion multiple collapsible>
        {tables
          .filter(({ rows }) => rows.length > 0)
          .map(({ name, rows }) => (
            <AccordionItem key={name} value={name}>
              <AccordionHeader size="small" as="h3">
                {catalogueTables[name].sheet}: {countsText(rows)}
              </AccordionHeader>
              <AccordionPanel>
                <Rows changes={rows} />
              </AccordionPanel>
            </AccordionItem>
          ))}
      </Accordion>
    </section>
  );
}
