import {
  Accordion,
  AccordionHeader,
  AccordionItem,
  AccordionPanel,
  Caption1,
  Checkbox,
  Field,
  Input,
  makeStyles,
  Select,
  Subtitle2,
  Textarea,
  tokens,
} from '@fluentui/react-components';
import { useCallback, useState } from 'react';
import { FRESH_PAPER, nextNumber, PAPER_CHOICES, type PaperChoice, type PaperFields } from '../../sheets/quote/paperFields';
import { quotesOfWorkbook } from '../../sheets/quote/readQuote';
import { changedSinceSent, type SinceSent } from '../../sheets/quote/sentQuotes';
import { writePaper } from '../../sheets/quote/writePaper';
import { today } from '../../sheets/table/today';
import type { Workbook } from '../../workbook/workbook';
import { useOnSheets } from '../controls/useOnSheets';
import { useRun } from '../controls/useRun';
import { useStored } from '../controls/useStored';
import { WriteButton } from '../controls/WriteButton';
import { WrittenBar } from '../controls/WrittenBar';
import { SentList } from './SentList';

const useStyles = makeStyles({
  panel: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM },
  choices: { display: 'flex', flexDirection: 'column' },
  // Inputs would else be as wide as their usual text.
  narrow: { minWidth: 0, width: '100%' },
});

/** The quotes of a workbook, and what went to customers. */
interface Found {
  readonly quotes: readonly string[];
  readonly sent: readonly SinceSent[];
}

function useQuotes(workbook: Workbook): readonly [Found, () => Promise<void>] {
  const [found, setFound] = useState<Found>({ quotes: [], sent: [] });
  const look = useCallback(async () => {
    const quotes = (await quotesOfWorkbook(workbook).catch(() => [])).map(({ sheet }) => sheet);
    setFound({ quotes, sent: await changedSinceSent(workbook).catch(() => []) });
  }, [workbook]);
  useOnSheets(workbook, look);
  return [found, look];
}

function PaperFieldsForm({
  fields,
  onFields,
}: {
  readonly fields: PaperFields;
  readonly onFields: (change: Partial<PaperFields>) => void;
}) {
  const styles = useStyles();
  const line = (field: 'ownName' | 'number', label: string, hint?: string) => (
    <Field label={label} hint={hint}>
      <Input className={styles.narrow} value={fields[field]} onChange={(_, { value }) => onFields({ [field]: value })} />
    </Field>
  );
  const lines = (field: 'ownAddress' | 'leadText' | 'terms', label: string, hint?: string) => (
    <Field label={label} hint={hint}>
      <Textarea
        className={styles.narrow}
        resize="vertical"
        value={fields[field]}
        onChange={(_, { value }) => onFields({ [field]: value })}
      />
    </Field>
  );
  const choose = (choice: PaperChoice, isShown: boolean) =>
    onFields({ leftOut: [...fields.leftOut.filter(each => each !== choice), ...(isShown ? [] : [choice])] });
  return (
    <>
      {line('ownName', 'Your name')}
      {lines('ownAddress', 'Your address', 'Address, phone, tax number')}
      {line('number', 'Quote number', 'Counts up after each quote')}
      {lines('leadText', 'Text above the lines')}
      {lines('terms', 'Terms', 'Delivery, payment, warranty')}
      <Accordion collapsible>
        <AccordionItem value="columns">
          <AccordionHeader size="small" as="h3">
            Columns of the paper
          </AccordionHeader>
          <AccordionPanel className={styles.choices}>
            {(Object.entries(PAPER_CHOICES) as [PaperChoice, string][]).map(([choice, label]) => (
              <Checkbox
                key={choice}
                label={label}
                checked={!fields.leftOut.includes(choice)}
                onChange={(_, { checked }) => choose(choice, checked === true)}
              />
            ))}
          </AccordionPanel>
        </AccordionItem>
      </Accordion>
    </>
  );
}

interface Props {
  readonly workbook: Workbook;
  /** The quote that was written last in this view: it is offered though the selection has not moved since. */
  readonly newest?: string | undefined;
}

/** Makes a paper for the customer of a quote of this workbook, and says what has changed since one was sent. */
export function PaperPanel({ workbook, newest }: Props) {
  const styles = useStyles();
  const [fields, setFields] = useStored('quotePaper', FRESH_PAPER);
  const [chosen, setChosen] = useState('');
  const [{ quotes: known, sent }, look] = useQuotes(workbook);
  const [outcome, run] = useRun<string>();
  const quotes = newest === undefined || known.includes(newest) ? known : [...known, newest];
  if (quotes.length === 0 && sent.length === 0) return null;
  const quote = quotes.includes(chosen) ? chosen : (newest ?? quotes.at(-1));
  const write = (sheet: string) =>
    run(async () => {
      const paper = await writePaper(workbook, sheet, fields, today());
      setFields({ number: nextNumber(fields.number) });
      await look();
      return paper;
    });
  return (
    <section className={styles.panel} aria-label="For the customer">
      <Subtitle2 as="h2">For the customer</Subtitle2>
      {quotes.length > 1 && (
        <Field label="Quote">
          <Select className={styles.narrow} value={quote} onChange={(_, { value }) => setChosen(value)}>
            {quotes.map(name => (
              <option key={name}>{name}</option>
            ))}
          </Select>
        </Field>
      )}
      <PaperFieldsForm fields={fields} onFields={setFields} />
      {quote !== undefined && (
        <WriteButton disabled={outcome.status === 'busy'} onClick={() => void write(quote)}>
          {outcome.status === 'busy' ? 'Writing …' : 'Write the quote for the customer'}
        </WriteButton>
      )}
      <WrittenBar workbook={workbook} outcome={outcome} sheets={outcome.status === 'done' ? [outcome.result] : undefined} />
      <Caption1 block>
        The new sheet holds values as of today. {quote === undefined ? 'The quote' : `Sheet ${quote}`} and the sheet with its cost
        and margin stay here. To send it, move or copy the new sheet to a workbook of its own, or print it.
      </Caption1>
      <SentList workbook={workbook} sent={sent} onLook={() => void look()} />
    </section>
  );
}
