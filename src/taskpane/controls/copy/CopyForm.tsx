import { Body1, Checkbox, Field, makeStyles, Radio, RadioGroup, tokens } from '@fluentui/react-components';
import type { CopyKind } from '../../../sheets/copy/copyWishes';
import type { Workbook } from '../../../workbook/workbook';
import type { HostServices } from '../viewProps';
import { WriteButton } from '../WriteButton';
import { CopyOutcome } from './CopyOutcome';
import { useCopy } from './useCopy';

const useStyles = makeStyles({
  form: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  ticks: { display: 'flex', flexDirection: 'column', margin: 0, padding: 0, border: 'none', minWidth: 0 },
  buttons: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS },
});

interface Props {
  readonly workbook: Workbook;
  readonly services: HostServices;
}

const HINTS: Readonly<Record<CopyKind, string>> = {
  values: 'For a customer, or to keep: numbers and words as they are now.',
  formulas:
    'For an office without Benchrow: formulas that every spreadsheet program calculates. What they cannot express becomes a value, coloured and listed.',
};

/** Which sheets, what kind, with or without costs and parts data; then as a file or as new sheets. */
export function CopyForm({ workbook, services }: Props) {
  const styles = useStyles();
  const { choice, change, sheets, outcome, copyTo } = useCopy(workbook, services);
  const canDownload = services.canDownload();
  const busy = outcome.status === 'busy';
  return (
    <div className={styles.form}>
      <Body1>
        Other spreadsheet programs do not know Benchrow’s functions and show #NAME?. Pass on a copy that needs no Benchrow.
      </Body1>
      <Field label="Kind" hint={HINTS[choice.kind]}>
        <RadioGroup value={choice.kind} onChange={(_, { value }) => change({ kind: value as CopyKind })}>
          <Radio value="values" label="Values only" />
          <Radio value="formulas" label="Plain formulas" />
        </RadioGroup>
      </Field>
      <Checkbox
        label="With costs and margins"
        checked={choice.withCosts}
        onChange={(_, { checked }) => change({ withCosts: checked === true })}
      />
      <Checkbox
        label="With parts data (catalogue)"
        checked={choice.withParts}
        onChange={(_, { checked }) => change({ withParts: checked === true })}
      />
      {/* No Field: it would give all of its ticks one id. */}
      <fieldset className={styles.ticks}>
        <legend>Sheets</legend>
        {sheets.map(({ name, isTicked, isShut, remark }) => (
          <Checkbox
            key={name}
            label={remark === '' ? name : `${name} (${remark})`}
            checked={isTicked}
            disabled={isShut}
            onChange={(_, { checked }) => change({ sheets: { ...choice.sheets, [name]: checked === true } })}
          />
        ))}
      </fieldset>
      <div className={styles.buttons}>
        {canDownload && (
          <WriteButton appearance="primary" disabled={busy} onClick={() => void copyTo('file')}>
            Download the copy (.xlsx)
          </WriteButton>
        )}
        <WriteButton appearance={canDownload ? 'secondary' : 'primary'} disabled={busy} onClick={() => void copyTo('sheets')}>
          Write the copy as new sheets
        </WriteButton>
      </div>
      <CopyOutcome workbook={workbook} outcome={outcome} />
    </div>
  );
}
