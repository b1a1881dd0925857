import { Body1, Caption1, makeStyles, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import type { ViewProps } from '../controls/viewProps';
import { today } from '../../sheets/table/today';
import { freeSheetName } from '../../sheets/print/freeSheetName';
import { CopyPanel } from '../controls/copy/CopyPanel';
import { NoPartsData } from '../controls/NoPartsData';
import { ProblemList } from '../controls/ProblemList';
import { useFirstMistake } from '../controls/useFirstMistake';
import { WriteButton } from '../controls/WriteButton';
import { useStored } from '../controls/useStored';
import { belowCost } from '../../sheets/quote/belowCost';
import { marginSheet } from '../../sheets/quote/marginSheet';
import { JobsNote } from '../controls/JobsNote';
import { RATING_CAUTION } from '../../sheets/print/cautions';
import { CautionBar } from './CautionBar';
import { PaperPanel } from './PaperPanel';
import { mixedCustomers } from '../../sheets/quote/mixedCustomers';
import { RatingList } from './RatingList';
import { QuoteFields } from './QuoteFields';
import { FRESH_QUOTE, type QuoteFieldsText } from '../../sheets/quote/quoteSettings';
import { readQuoteSettings } from '../../sheets/quote/readQuoteSettings';
import { useJobsRead } from './useJobsRead';
import { useQuoteSources } from './useQuoteSources';
import { useRun } from '../controls/useRun';
import { WrittenBar } from '../controls/WrittenBar';
import { quoteSources, quoteWishes, writeQuote, type WrittenQuote } from '../../sheets/quote/writeQuote';

const useStyles = makeStyles({ view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM } });

type Receiver = Pick<QuoteFieldsText, 'customer' | 'reference'>;
/** Terms are kept from one visit to the next; whom a quote is for is not, so that none goes out in the name of the last one. */
const NOBODY: Receiver = { customer: '', reference: '' };

/** Makes a quote of the selected job lines. */
export function QuoteView({ workbook, services, goTo }: Pick<ViewProps, 'workbook' | 'services' | 'goTo'>) {
  const styles = useStyles();
  const [terms, setTerms] = useStored('quote', FRESH_QUOTE);
  const [receiver, setReceiver] = useState<Receiver>(NOBODY);
  const fields = { ...terms, ...receiver };
  const setFields = ({ customer, reference, ...part }: Partial<QuoteFieldsText>) => {
    setReceiver(before => ({ customer: customer ?? before.customer, reference: reference ?? before.reference }));
    setTerms(part);
  };
  const [isAsked, setIsAsked] = useState(false);
  const [form, leadToMistake] = useFirstMistake<HTMLDivElement>();
  const [sources, look] = useQuoteSources(workbook);
  const [outcome, run] = useRun<WrittenQuote>();
  const read = useJobsRead(workbook, quoteWishes);
  const [made, makeMargins] = useRun<string>();
  const classes = sources.margins?.classes ?? [];
  const { settings, mistakes } = readQuoteSettings(fields, classes, sources.format);

  const write = async () => {
    setIsAsked(true);
    leadToMistake();
    // Margins and formats may have changed since they were looked for: what is wrong with them now is shown too.
    look();
    const found = await quoteSources(workbook).catch(() => sources);
    const fresh = readQuoteSettings(fields, found.margins?.classes ?? [], found.format);
    if (fresh.settings) await run(() => writeQuote(workbook, fresh.settings!, found.margins, today(), read.wishes));
  };
  const addMargins = () =>
    makeMargins(async () => {
      const sheet = freeSheetName('Margins', await workbook.sheets(), today());
      await workbook.write(marginSheet(sheet, settings?.margin));
      look();
      return sheet;
    });
  const showLine = (row: number) =>
    read.view.status === 'ready' && void workbook.select({ sheet: read.view.jobs.report.sheet, address: `A${row}` });
  const written = outcome.status === 'done' ? outcome.result : undefined;
  const show = (row: number) => void workbook.select({ sheet: written!.read.sheet, address: `A${row}` });
  return (
    <div ref={form} className={styles.view}>
      <Body1>
        Select the lines to quote in your job sheet (Hose, Fitting A, Fitting B, Overall length, Quantity; Guard if you have it),
        or one cell of it for all lines.
      </Body1>
      <NoPartsData workbook={workbook} goTo={goTo} />
      <JobsNote workbook={workbook} {...read} />
      <CautionBar sentences={read.view.status === 'ready' ? mixedCustomers(read.view.jobs.lines) : []} />
      {read.view.status === 'ready' && <RatingList lines={read.view.jobs.lines} onShow={showLine} />}
      <QuoteFields
        fields={fields}
        mistakes={mistakes}
        isAsked={isAsked}
        classes={classes}
        found={sources.format}
        onFields={setFields}
      />
      <CautionBar sentences={settings ? belowCost(settings, classes) : []} />
      {fields.method === 'margin' && classes.length === 0 && (
        <WriteButton appearance="secondary" disabled={made.status === 'busy'} onClick={() => void addMargins()}>
          Make a sheet for margins by customer class
        </WriteButton>
      )}
      <WrittenBar workbook={workbook} outcome={made} sheets={made.status === 'done' ? [made.result] : undefined} />
      <WriteButton appearance="primary" disabled={outcome.status === 'busy'} onClick={() => void write()}>
        {outcome.status === 'busy' ? 'Writing …' : 'Write the quote as a new sheet'}
      </WriteButton>
      <WrittenBar workbook={workbook} outcome={outcome} sheets={written && [written.sheet, written.costs]} />
      {written && (
        <ProblemList title={`STOP, not quoted: lines of ${written.read.sheet}`} problems={written.read.stops} onShow={show} />
      )}
      {written && (
        <ProblemList title={`Lines of ${written.read.sheet} without a price`} problems={written.cautions} onShow={show} />
      )}
      <CautionBar sentences={written?.held ?? []} />
      <PaperPanel workbook={workbook} newest={written?.sheet} />
      <CopyPanel workbook={workbook} services={services} />
      <Caption1 block>
        Cost and margin go to a sheet of their own, which stays here. Prices are formulas: they follow the catalogue and the job
        sheet. Without tax. A price is no approval. {RATING_CAUTION}
      </Caption1>
    </div>
  );
}
