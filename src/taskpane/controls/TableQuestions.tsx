import {
  Button,
  makeStyles,
  MessageBar,
  MessageBarActions,
  MessageBarBody,
  MessageBarTitle,
  tokens,
} from '@fluentui/react-components';
import { useState } from 'react';
import { rememberAnswer, type TableKind } from '../../sheets/table/tableAnswers';
import type { TableQuestion } from '../../sheets/table/tableQuestion';
import type { Workbook } from '../../workbook/workbook';
import { errorSentence } from '../../workbook/errorSentence';

const useStyles = makeStyles({
  list: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  // Six units do not fit one row of a narrow pane.
  buttons: { flexWrap: 'wrap' },
});

interface Props {
  readonly workbook: Workbook;
  readonly kind: TableKind;
  /** The sheet that is asked about. */
  readonly sheet: string;
  readonly questions: readonly TableQuestion[];
  /** The answer is remembered: read the sheet again. */
  readonly onAnswered: () => void;
}

/** Two tables with the same heading ask the same once. */
const onceEach = (questions: readonly TableQuestion[]) => [
  ...new Map(questions.map(question => [`${question.asked} ${question.heading.toLowerCase()}`, question])).values(),
];

/** What a sheet does not say, each with its answers as buttons; an answer is remembered with the workbook. */
export function TableQuestions({ workbook, kind, sheet, questions, onAnswered }: Props) {
  const styles = useStyles();
  const [reason, setReason] = useState<string>();
  if (questions.length === 0) return null;
  const answer = async ({ asked, heading }: TableQuestion, value: string) => {
    try {
      await rememberAnswer(workbook, kind, sheet, asked, heading, value);
      setReason(undefined);
      onAnswered();
    } catch (error) {
      setReason(errorSentence(error));
    }
  };
  return (
    <section className={styles.list} aria-label={`Questions about ${sheet}`}>
      {onceEach(questions).map(question => (
        <MessageBar key={`${question.asked} ${question.heading}`} intent="warning" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>{sheet}</MessageBarTitle>
            {question.sentence}
          </MessageBarBody>
          <MessageBarActions className={styles.buttons}>
            {question.choices.map(({ value, label }) => (
              <Button
                key={value}
                size="small"
                appearance={value === question.proposal ? 'primary' : 'secondary'}
                onClick={() => void answer(question, value)}
              >
                {label}
              </Button>
            ))}
          </MessageBarActions>
        </MessageBar>
      ))}
      {reason && (
        <MessageBar intent="error" layout="multiline">
          <MessageBarBody>The answer was not remembered: {reason}</MessageBarBody>
        </MessageBar>
      )}
    </section>
  );
}
