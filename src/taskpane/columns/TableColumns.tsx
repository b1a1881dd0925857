import { Body1, Button, makeStyles, MessageBar, MessageBarBody, MessageBarTitle, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import { freshSettings } from '../../sheets/cutlist/cutSettings';
import { benchStep } from '../../sheets/table/benchStep';
import { useStored } from '../controls/useStored';
import { measureUnit } from '../../core/units/measureUnit';
import { bundlesOf } from '../../sheets/columns/bundles';
import type { AddedColumns } from '../../sheets/columns/needLook';
import type { Offer } from '../../sheets/columns/offer';
import { BundleList } from './BundleList';
import { CrimpCautions } from './CrimpCautions';
import type { Told } from '../controls/ToldBar';
import { addressOf } from '../../workbook/a1';
import type { Workbook } from '../../workbook/workbook';
import { catalogueHindrance } from '../../sheets/catalogue/catalogueState';
import { columnsView, type ColumnsRead } from '../../sheets/columns/columnsView';
import { datesAmongLengths, textFormatChanges } from '../../sheets/columns/dateLengths';
import { limitsLeftOut } from '../../sheets/columns/nextDialRecipe';
import { OfferFields } from './OfferFields';
import { OfferList } from './OfferList';
import { NO_SETTINGS, offerOptions } from '../../sheets/columns/offerSettings';
import { offersFor } from '../../sheets/columns/offers';
import { formOf, planColumns } from '../../sheets/columns/planColumns';
import { canSpill, MANY_ROWS, type FormulaForm } from '../../sheets/columns/formulaForm';
import { columnsReadIn } from '../../sheets/columns/columnsReadIn';
import { COLUMN_ROLE_CHOICES } from '../../sheets/columns/columnRoles';
import { missingFormulas } from '../../sheets/columns/missingFormulas';
import { CorrectHeadings } from '../controls/CorrectHeadings';
import { ReadNote } from '../controls/ReadNote';
import { linesReport } from '../../sheets/columns/lineRows';
import { TableQuestions } from '../controls/TableQuestions';
import { priceFormat } from '../../sheets/catalogue/priceFormat';
import { FillFormulas } from '../controls/FillFormulas';
import { FormulaFormChoice } from './FormulaFormChoice';
import { errorSentence } from '../../workbook/errorSentence';

const useStyles = makeStyles({
  part: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalL },
  settings: {
    '& > div': { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS, paddingTop: tokens.spacingVerticalS },
  },
  start: { alignSelf: 'flex-start' },
});

const ADD_WORDS = ['Tick the columns to add', 'Add 1 column'];

type Ready = Extract<ColumnsRead, { status: 'ready' }>;
/** Reads the table again before writing: it may have changed since it was shown. */
async function freshView(workbook: Workbook, { table }: Ready): Promise<Ready> {
  const fresh = await columnsView(workbook, { sheet: table.sheet, block: { ...table.block, rows: 2 } });
  if (fresh.status !== 'ready' || fresh.table.headings.join('|') !== table.headings.join('|'))
    throw new Error('The table has changed. Select it again. Nothing was written.');
  return fresh;
}

interface Props {
  readonly workbook: Workbook;
  readonly view: Ready;
  readonly onTold: (message: Told | undefined) => void;
  readonly onAdded: (added: AddedColumns | undefined) => void;
  readonly onLoadParts: () => void;
  /** Reads the table again. */
  readonly onAgain: () => void;
}

/** The table found: what its columns are, what can be added to it. */
export function TableColumns({ workbook, view, onTold, onAdded, onLoadParts, onAgain }: Props) {
  const styles = useStyles();
  const { table, columns, catalogue, units, kind, questions } = view;
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const [chosenForm, setChosenForm] = useState<FormulaForm>();
  const [settings, setSettings] = useState(NO_SETTINGS);
  const [busy, setBusy] = useState(false);
  const [writtenCrimps, setWrittenCrimps] = useState<readonly string[]>([]);
  const [{ unit: cutUnit, step }] = useStored('cuts', freshSettings('mm'));
  const form = formOf(view, chosenForm);
  const options = {
    ...offerOptions(settings, form === 'column'),
    benchStep: { value: benchStep({ unit: cutUnit, step }, cutUnit), unit: measureUnit('length', cutUnit)! },
  };
  const offers = offersFor(view, options);
  const missing = missingFormulas(view);
  const dates = datesAmongLengths(view);
  const picked = offers.filter(offer => !offer.reason && chosen.has(offer.id));

  const run = async (work: (fresh: Ready) => Promise<string>) => {
    setBusy(true);
    onTold(undefined);
    onAdded(undefined);
    try {
      onTold({ intent: 'success', text: await work(await freshView(workbook, view)) });
    } catch (error) {
      onTold({ intent: 'error', text: errorSentence(error) });
    } finally {
      setBusy(false);
    }
  };
  const add = (wanted: readonly Offer[]) =>
    run(async fresh => {
      const money = await priceFormat(workbook);
      const dressed = wanted.map(offer => (offer.isMoney && money ? { ...offer, format: money } : offer));
      const plan = planColumns(fresh, dressed, { form });
      await workbook.write(plan.changes, 'blank');
      setChosen(new Set());
      setWrittenCrimps(wanted.filter(({ crimp }) => crimp).map(({ id }) => id));
      onAdded(plan.added);
      return plan.message;
    });
  const fill = () =>
    run(async fresh => {
      const { rows, headings, changes } = missingFormulas(fresh);
      if (rows.length === 0) throw new Error('Every row has its formulas by now. Nothing was written.');
      await workbook.write(changes, 'blank');
      onAgain();
      return `Filled ${headings.join(', ')} in rows ${rows.join(', ')} of sheet ${fresh.table.sheet}.`;
    });
  const setText = () =>
    run(async fresh => {
      const changes = textFormatChanges(fresh);
      if (changes.length === 0) throw new Error('No typed length column to set to text. Nothing was written.');
      await workbook.write(changes);
      return `Set to text: ${changes.map(change => ('at' in change ? change.at.address : '')).join(', ')}. Type the lengths that show as dates again.`;
    });

  return (
    <div className={styles.part}>
      <Body1>
        Table {addressOf(table.block)} of sheet {table.sheet}, {table.block.rows - 1} rows
        {table.hostTable ? ' (an Excel table)' : ''}.
        {form === 'column' &&
          ` One formula will serve all rows${chosenForm ? '' : ` (proposed above ${MANY_ROWS})`}. Change it under Settings.`}
      </Body1>
      {dates.length > 0 && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>Lengths that are dates</MessageBarTitle>
            {dates.slice(0, 8).join(', ')}
            {dates.length > 8 && ` and ${dates.length - 8} more`}: the sheet has turned what was typed (like 3/8) into dates. Set
            the columns to text and type these again.
          </MessageBarBody>
        </MessageBar>
      )}
      <TableQuestions workbook={workbook} kind={kind} sheet={table.sheet} questions={questions} onAnswered={onAgain} />
      <ReadNote workbook={workbook} report={linesReport(view)} />
      <FillFormulas missing={missing} busy={busy} onFill={() => void fill()} />
      <BundleList
        bundles={bundlesOf(offers)}
        hindrance={catalogueHindrance(catalogue)}
        busy={busy}
        onAdd={bundle => void add(bundle.offers)}
      />
      {writtenCrimps.length > 0 && picked.length === 0 && (
        <CrimpCautions
          limitsLeftOut={writtenCrimps.some(id => id.startsWith('nextDial')) ? limitsLeftOut({ ...view, options, units }) : []}
        />
      )}
      <OfferFields columns={columns} catalogue={catalogue} settings={settings} onChange={setSettings} />
      <OfferList
        offers={offers}
        chosen={chosen}
        hindrance={catalogueHindrance(catalogue)}
        limitsLeftOut={limitsLeftOut({ ...view, options, units })}
        onLoadParts={onLoadParts}
        onChange={(id, on) => setChosen(old => new Set(on ? [...old, id] : [...old].filter(each => each !== id)))}
      />
      <Button appearance="primary" disabledFocusable={busy || picked.length === 0} onClick={() => void add(picked)}>
        {busy ? 'Writing …' : (ADD_WORDS[picked.length] ?? `Add ${picked.length} columns`)}
      </Button>
      <CorrectHeadings
        workbook={workbook}
        kind={kind}
        sheet={table.sheet}
        columns={columnsReadIn(view)}
        roles={COLUMN_ROLE_CHOICES}
        onCorrected={onAgain}
      />
      {(canSpill(table) || columns.overall || columns.cutOffA || columns.cutOffB) && (
        <details className={styles.settings}>
          <summary>Settings</summary>
          <div>
            {canSpill(table) && <FormulaFormChoice form={form} rows={table.block.rows - 1} onChange={setChosenForm} />}
            {(columns.overall || columns.cutOffA || columns.cutOffB) && (
              <Button disabledFocusable={busy} onClick={setText}>
                Set length columns to text
              </Button>
            )}
          </div>
        </details>
      )}
    </div>
  );
}
