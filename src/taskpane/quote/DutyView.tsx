import {
  Body1,
  Button,
  Caption1,
  makeStyles,
  MessageBar,
  MessageBarBody,
  MessageBarTitle,
  Spinner,
  tokens,
} from '@fluentui/react-components';
import { useMemo, useState } from 'react';
import type { Catalogue } from '../../core/catalogue/catalogue';
import type { Told } from '../controls/ToldBar';
import { NoPartsBar } from '../controls/NoPartsData';
import type { ViewProps } from '../controls/viewProps';
import { useStored } from '../controls/useStored';
import { candidates, type Candidates, type Choice } from '../../sheets/duty/candidates';
import { endFormsOf, fluidsOf, FRESH_DUTY, type DutyText } from '../../sheets/duty/dutyFields';
import { DutyForm } from './DutyForm';
import { DutyResults } from './DutyResults';
import { foundText } from '../../sheets/duty/choiceTexts';
import { insertChoice, rowContent } from '../../sheets/duty/insertChoice';
import { readDuty, type Demand } from '../../sheets/duty/readDuty';
import { useCatalogue } from '../controls/useCatalogue';
import { errorSentence } from '../../workbook/errorSentence';

const useStyles = makeStyles({
  panel: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalL },
  list: { margin: 0, paddingLeft: '1.2em' },
});

interface Answer {
  readonly number: number;
  readonly catalogue: Catalogue;
  readonly demand: Demand;
  readonly found: Candidates;
  readonly fields: DutyText;
}

/** From what an assembly has to do to the hose, the fittings, the length, the cost, and a row of the job sheet. */
export function DutyView({ workbook, goTo }: ViewProps) {
  const styles = useStyles();
  const [stored, setFields] = useStored<DutyText>('duty', FRESH_DUTY);
  const fields = Array.isArray(stored.route) ? stored : FRESH_DUTY;
  const [view, readAgain] = useCatalogue(workbook);
  const [isAsked, setIsAsked] = useState(false);
  const [answer, setAnswer] = useState<Answer>();
  const [message, setTold] = useState<{ readonly hose: string; readonly what: Told }>();
  const { demand, mistakes } = readDuty(fields);
  const catalogue = view.status === 'ready' ? view.catalogue : undefined;
  const endForms = useMemo(() => endFormsOf(catalogue?.fittings ?? []), [catalogue]);
  const fluids = useMemo(() => fluidsOf(catalogue?.hoses ?? []), [catalogue]);
  const find = async () => {
    setIsAsked(true);
    setTold(undefined);
    const fresh = await readAgain();
    if (!demand || fresh.status !== 'ready') return setAnswer(undefined);
    const found = candidates(fresh.catalogue, demand);
    setAnswer(before => ({ number: (before?.number ?? 0) + 1, catalogue: fresh.catalogue, demand, found, fields }));
  };
  const insert = async (from: Answer, choice: Choice) => {
    const tell = (what: Told) => setTold({ hose: choice.hose.hose, what });
    setTold(undefined);
    try {
      tell({
        intent: 'success',
        text: await insertChoice(workbook, rowContent(from.catalogue, from.demand, choice), from.catalogue),
      });
    } catch (error) {
      tell({ intent: 'error', text: errorSentence(error) });
    }
  };
  const count = Object.keys(mistakes).length;
  return (
    <div className={styles.panel}>
      <Body1>What must the hose do? Fill in the form, find the hoses that suit, and insert one as a row of your own table.</Body1>
      {view.status === 'loading' && <Spinner size="tiny" label="Reading the parts data" />}
      {view.status === 'none' && <NoPartsBar goTo={goTo} />}
      {view.status === 'failed' && (
        <MessageBar intent="error" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>The parts data cannot be read</MessageBarTitle>
            {view.reason}
          </MessageBarBody>
        </MessageBar>
      )}
      {catalogue && <Caption1>Parts data: {catalogue.handle}</Caption1>}
      <DutyForm {...{ fields, mistakes, isAsked, endForms, fluids }} isAnswered={answer !== undefined} onFields={setFields} />
      <Button appearance={answer ? 'secondary' : 'primary'} onClick={() => void find()}>
        Find hoses
      </Button>
      {isAsked && count > 0 && (
        <MessageBar intent="error" layout="multiline" role="alert">
          <MessageBarBody>
            <MessageBarTitle>{count === 1 ? '1 field' : `${count} fields`} to correct</MessageBarTitle>
            <ul className={styles.list}>
              {Object.entries(mistakes).map(([key, mistake]) => (
                <li key={key}>{mistake}.</li>
              ))}
            </ul>
          </MessageBarBody>
        </MessageBar>
      )}
      {/* The region is there before its words: some screen readers say only what changes in one. */}
      <div role="status">{answer && <Body1 key={answer.number}>{foundText(answer.found)}</Body1>}</div>
      {answer && (
        <DutyResults
          key={answer.number}
          catalogue={answer.catalogue}
          demand={answer.demand}
          found={answer.found}
          message={message}
          isStale={answer.fields !== fields}
          onInsert={choice => void insert(answer, choice)}
        />
      )}
    </div>
  );
}
