import { Button, Caption1, Field, makeStyles, MessageBar, MessageBarBody, Select, tokens } from '@fluentui/react-components';
import { useMemo, useState } from 'react';
import type { ColumnRead, RoleChoice } from '../../sheets/table/columnsRead';
import { rememberAnswer, type TableKind } from '../../sheets/table/tableAnswers';
import { columnLetters } from '../../workbook/a1';
import type { Workbook } from '../../workbook/workbook';
import { errorSentence } from '../../workbook/errorSentence';

const useStyles = makeStyles({
  list: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalXS, paddingTop: tokens.spacingVerticalS },
  narrow: { minWidth: 0 },
});

interface Props {
  readonly workbook: Workbook;
  readonly kind: TableKind;
  readonly sheet: string;
  /** The columns of the table, as they were read. */
  readonly columns: readonly ColumnRead[];
  /** What a column can be. */
  readonly roles: readonly RoleChoice[];
  /** Shown open: nothing can be read before something is said. */
  readonly isOpen?: boolean;
  /** The correction is remembered: read the sheet again. */
  readonly onCorrected: () => void;
}

/** What a heading is corrected to where its column is to be left alone. */
const NOT_READ = 'none';

/** Which heading means what, to be corrected by hand; corrections are remembered with the workbook. */
export function CorrectHeadings({ workbook, kind, sheet, columns, roles, isOpen, onCorrected }: Props) {
  const styles = useStyles();
  const [reason, setReason] = useState<string>();
  // A wide table has hundreds of choices: closed, they would be drawn anew at every key that is pressed in the view.
  const [wasOpened, setWasOpened] = useState(isOpen);
  if (isOpen && !wasOpened) setWasOpened(true);
  const choices = useMemo(
    () =>
      roles.map(({ role, label }) => (
        <option key={role} value={role}>
          {label}
        </option>
      )),
    [roles],
  );
  const correct = async (headings: readonly string[], role: string | undefined) => {
    try {
      for (const heading of headings) await rememberAnswer(workbook, kind, sheet, 'role', heading, role);
      setReason(undefined);
      onCorrected();
    } catch (error) {
      setReason(errorSentence(error));
    }
  };
  const list = () => (
    <div className={styles.list}>
      <Caption1>Read from the headings and the content. Correct what is wrong: the workbook remembers it.</Caption1>
      {columns.map(({ column, heading, role }) => (
        <Field key={column} label={`${columnLetters(column)}: ${heading}`} orientation="horizontal" size="small">
          <Select
            className={styles.narrow}
            size="small"
            value={role ?? NOT_READ}
            onChange={(_, { value }) => void correct([heading], value)}
          >
            <option value={NOT_READ}>not read</option>
            {role !== undefined && !roles.some(each => each.role === role) && <option value={role}>{role}</option>}
            {choices}
          </Select>
        </Field>
      ))}
      <div>
        <Button
          size="small"
          onClick={() =>
            void correct(
              columns.map(({ heading }) => heading),
              undefined,
            )
          }
        >
          Forget the corrections
        </Button>
      </div>
      {reason && (
        <MessageBar intent="error" layout="multiline" role="alert">
          <MessageBarBody>The correction was not remembered: {reason}</MessageBarBody>
        </MessageBar>
      )}
    </div>
  );
  return (
    <details open={isOpen} onToggle={({ currentTarget }) => setWasOpened(wasOpened || currentTarget.open)}>
      <summary>Columns read</summary>
      {wasOpened && list()}
    </details>
  );
}
