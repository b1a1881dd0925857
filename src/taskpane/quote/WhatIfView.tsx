import { Body1, Button, Caption1, Checkbox, Field, Input, makeStyles, Subtitle2, tokens } from '@fluentui/react-components';
import { useCallback, useEffect, useState } from 'react';
import { dayNumber, isoDate } from '../../core/units/sheetDate';
import { today } from '../../sheets/table/today';
import { NoPartsData } from '../controls/NoPartsData';
import type { ViewProps } from '../controls/viewProps';
import { WriteButton } from '../controls/WriteButton';
import type { ReadQuote } from '../../sheets/quote/readQuote';
import { FITTINGS_KEY, GUARDS_KEY, readRises } from '../../sheets/quote/riseFields';
import { useRun } from '../controls/useRun';
import { whatIfSources, writeWhatIf, type WhatIfSources } from '../../sheets/quote/writeWhatIf';
import { WrittenBar } from '../controls/WrittenBar';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM },
  grid: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(110px, 100%), 1fr))',
    alignItems: 'start',
    gap: tokens.spacingHorizontalM,
  },
  narrow: { minWidth: 0, width: '100%' },
  list: { display: 'flex', flexDirection: 'column' },
});

/** A quote is open until its last day is over; one without a day stays open. */
const isOpen = ({ validUntil }: ReadQuote) => validUntil === undefined || validUntil >= dayNumber(today())!;

function quoteLabel(quote: ReadQuote): string {
  const { sheet, customer, validUntil } = quote;
  const until = validUntil === undefined ? 'no validity' : `${isOpen(quote) ? 'valid until' : 'ended'} ${isoDate(validUntil)}`;
  return [sheet, customer, until].filter(Boolean).join(', ');
}

interface QuoteListProps {
  readonly quotes: readonly ReadQuote[];
  readonly isChosen: (quote: ReadQuote) => boolean;
  readonly onChosen: (sheet: string, on: boolean) => void;
}

function QuoteList({ quotes, isChosen, onChosen }: QuoteListProps) {
  const styles = useStyles();
  return (
    <section className={styles.list} aria-label="Quotes to compare">
      <Subtitle2 as="h2">Quotes</Subtitle2>
      {quotes.map(quote => (
        <Checkbox
          key={quote.sheet}
          label={quoteLabel(quote)}
          checked={isChosen(quote)}
          onChange={(_, { checked }) => onChosen(quote.sheet, checked === true)}
        />
      ))}
    </section>
  );
}

/** What a rise of prices does to open quotes, beside them: the catalogue stays as it is. */
export function WhatIfView({ workbook, goTo }: Pick<ViewProps, 'workbook' | 'goTo'>) {
  const styles = useStyles();
  const [looked, look] = useRun<WhatIfSources>();
  const [written, write] = useRun<readonly string[]>();
  const [texts, setTexts] = useState<Readonly<Record<string, string>>>({});
  const [all, setAll] = useState('');
  const [chosen, setChosen] = useState<Readonly<Record<string, boolean>>>({});
  const refresh = useCallback(() => look(() => whatIfSources(workbook)), [look, workbook]);
  useEffect(() => {
    void refresh();
  }, [refresh]);
  const found = looked.status === 'done' ? looked.result : undefined;
  const families = found?.families ?? [];
  const keys = [...families, FITTINGS_KEY, ...(found?.hasGuards ? [GUARDS_KEY] : [])];
  const { rises, mistakes } = readRises(texts, families);
  const isChosen = (quote: ReadQuote) => chosen[quote.sheet] ?? isOpen(quote);
  const picked = (found?.quotes ?? []).filter(isChosen).map(({ sheet }) => sheet);
  const nameOf = (key: string) => (key === FITTINGS_KEY ? 'Fittings' : key === GUARDS_KEY ? 'Guards' : key);
  const rise = (key: string) => (
    <Field
      key={key}
      label={`${nameOf(key)} (%)`}
      validationState={mistakes[key] ? 'error' : 'none'}
      validationMessage={mistakes[key]}
    >
      <Input
        className={styles.narrow}
        value={texts[key] ?? ''}
        onChange={(_, { value }) => setTexts(before => ({ ...before, [key]: value }))}
      />
    </Field>
  );
  return (
    <div className={styles.view}>
      <Body1>How much prices rise, by hose family, for fittings and guards. Blank: as now. Negative: price cut.</Body1>
      <NoPartsData workbook={workbook} goTo={goTo} />
      {looked.status === 'failed' && <WrittenBar workbook={workbook} outcome={looked} failure="" />}
      {found && (
        <>
          <div className={styles.grid}>
            <Field label="All (%)">
              <Input
                className={styles.narrow}
                value={all}
                onChange={(_, { value }) => {
                  setAll(value);
                  setTexts(Object.fromEntries(keys.map(key => [key, value])));
                }}
              />
            </Field>
            {keys.map(rise)}
          </div>
          {found.quotes.length > 0 ? (
            <QuoteList
              quotes={found.quotes}
              isChosen={isChosen}
              onChosen={(sheet, on) => setChosen(before => ({ ...before, [sheet]: on }))}
            />
          ) : (
            <>
              <Body1>There is no quote in this workbook yet. Write one first, then compare it here.</Body1>
              <Button onClick={() => goTo('quote/quote')}>Write a quote</Button>
            </>
          )}
        </>
      )}
      <WriteButton
        appearance="primary"
        disabled={!rises || picked.length === 0 || written.status === 'busy'}
        onClick={() => void write(() => writeWhatIf(workbook, rises!, picked, today()))}
      >
        Write the comparison as new sheets
      </WriteButton>
      <Button disabled={looked.status === 'busy'} onClick={() => void refresh()}>
        Look for quotes again
      </Button>
      <WrittenBar workbook={workbook} outcome={written} sheets={written.status === 'done' ? written.result : undefined} />
      <Caption1 block>
        The catalogue and the quotes are only read. The new sheets hold a second catalogue, whose prices follow the first with the
        rise, and its handle beside the old one; delete them when you are done.
      </Caption1>
    </div>
  );
}
