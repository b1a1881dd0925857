import { Body1, Caption1, Field, Input, makeStyles, MessageBar, MessageBarBody, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import { freeSheetName } from '../../sheets/print/freeSheetName';
import { freshSettings, type CutSettingsText } from '../../sheets/cutlist/cutSettings';
import { orderOfJobs } from '../../sheets/week/orderOfJobs';
import { benchStep } from '../../sheets/table/benchStep';
import { today } from '../../sheets/table/today';
import { useStored } from '../controls/useStored';
import type { ViewProps } from '../controls/viewProps';
import { cardPage, type CardPageOptions } from '../../sheets/benchcard/cardPage';
import { cardSheet } from '../../sheets/benchcard/cardSheet';
import type { CardWishes } from '../../sheets/jobs/gatherCards';
import { JobsNote, WITH_PLANNED, type JobTicks } from '../controls/JobsNote';
import { FRESH_CARDS, type CardFields } from './cardFields';
import { FRESH_ORDER, machineNow } from './orderFields';
import { useCards } from './useCards';
import { OutputButtons } from '../controls/OutputButtons';
import { noCrimpData } from '../../sheets/jobs/missingDataNote';
import { typedProofFactor } from '../../sheets/table/typedFields';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM },
  grid: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(128px, 100%), 1fr))',
    alignItems: 'start',
    gap: tokens.spacingHorizontalM,
  },
  narrow: { minWidth: 0, width: '100%' },
  // Standard and clause.
  long: { gridColumn: '1 / -1' },
});

/** What the user says about pressure and machine; what the bench can cut is said with the cut list, so that both round alike. */
export function wishesOf(
  { machine, pressureUnit }: Pick<CardFields, 'machine' | 'pressureUnit'>,
  { unit, step }: Pick<CutSettingsText, 'unit' | 'step'>,
): CardWishes {
  return { unit, step: benchStep({ unit, step }, unit), pressureUnit, machine };
}

/** Bench cards of the selected lines: printed, or written as a new sheet. */
export function CardsView({ workbook, services }: Pick<ViewProps, 'workbook' | 'services'>) {
  const styles = useStyles();
  const [fields, setFields] = useStored<CardFields>('cards', FRESH_CARDS);
  const [bench] = useStored('cuts', freshSettings('mm'));
  const [order] = useStored('order', FRESH_ORDER);
  const [remark, setRemark] = useState<string>();
  const { value: factor, mistake } = typedProofFactor(fields.factor, 'enter it, like 2');
  const [ticks, setTicks] = useState<JobTicks>(WITH_PLANNED);
  const { view, refresh, gather: read, show } = useCards(workbook, { ...wishesOf(fields, bench), ...ticks });
  const gather = async () => {
    setRemark(undefined);
    if (!factor) throw new Error(`${mistake}.`);
    const { cards: unordered, source, jobs } = await read();
    const { rows } = orderOfJobs(jobs, machineNow(order), bench.unit);
    const rank = (row: number) => (rows.includes(row) ? rows.indexOf(row) : rows.length);
    const cards = [...unordered].sort((a, b) => rank(a.row) - rank(b.row));
    if (cards.length === 0) throw new Error('There is no open line in the selection.');
    setRemark(noCrimpData(cards, workbook.host));
    const options: CardPageOptions = { rule: { factor, hold: fields.hold, source: fields.source }, source, today: today() };
    return { cards, options };
  };
  const page = async () => {
    const { cards, options } = await gather();
    return cardPage(cards, options);
  };
  const write = async () => {
    const { cards, options } = await gather();
    const sheet = freeSheetName('Bench cards', await workbook.sheets(), today());
    await workbook.write(cardSheet(sheet, cards, options));
    return sheet;
  };
  const text = (field: keyof CardFields, label: string, hint?: string, mistake?: string) => (
    <Field
      className={field === 'source' ? styles.long : undefined}
      label={label}
      hint={hint}
      validationState={mistake ? 'error' : 'none'}
      validationMessage={mistake}
    >
      <Input className={styles.narrow} value={fields[field]} onChange={(_, { value }) => setFields({ [field]: value })} />
    </Field>
  );
  return (
    <div className={styles.view}>
      <Body1>
        One card a line, two a page, in the order of work, from the selected job lines; set-ups come from the sheet, else from the
        Catalogue. Print them after the cut list: then they name pieces and lots.
      </Body1>
      <div className={styles.grid}>
        {text('factor', 'Proof factor', '× working pressure', mistake)}
        {text('hold', 'Hold')}
        {text('source', 'Rule from')}
        {text('pressureUnit', 'Pressure unit', 'Where the sheet names none')}
        {text('machine', 'Machine', 'Uses this machine’s recorded dials')}
      </div>
      <JobsNote workbook={workbook} view={view} ticks={ticks} onTicks={setTicks} onAnswered={refresh} onShow={show} />
      <OutputButtons
        workbook={workbook}
        services={services}
        page={page}
        onWrite={write}
        printLabel="Print cards"
        writeLabel="Write as a new sheet"
        writtenNote={
          workbook.host === 'try-out'
            ? 'The try-out sheet has no pictures: the clock picture of bent ends is on the printed cards.'
            : undefined
        }
      />
      {remark && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>{remark}</MessageBarBody>
        </MessageBar>
      )}
      <Caption1>
        The makers’ current data come first. A line that must not be made gets a card that says STOP and why, without test
        pressure.
      </Caption1>
    </div>
  );
}
