import {
  Body1,
  Button,
  Caption1,
  Field,
  Input,
  makeStyles,
  MessageBar,
  MessageBarBody,
  tokens,
} from '@fluentui/react-components';
import { useState } from 'react';
import type { Decimal } from '../../core/units/decimal';
import { typedSize } from '../../sheets/table/typedFields';
import { CAPABLE, checkOfGauge, studyOfGauge } from '../../sheets/gauges/gaugeStudies';
import type { CellValue, Workbook } from '../../workbook/workbook';
import { errorSentence } from '../../workbook/errorSentence';

const useStyles = makeStyles({
  section: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  grid: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(128px, 100%), 1fr))',
    alignItems: 'start',
    gap: tokens.spacingHorizontalM,
  },
  narrow: { minWidth: 0, width: '100%' },
  row: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS },
});

type Said = { readonly intent: 'success' | 'warning' | 'error'; readonly lines: readonly string[] };
type Values = readonly (readonly CellValue[])[];

function needed(text: string, what: string): Decimal {
  const { value, mistake } = typedSize(text, what);
  if (!value) throw new Error(`${mistake}.`);
  return value;
}

function checkText(values: Values, reference: string, tolerance: string): Said {
  const found = checkOfGauge(values, needed(reference, 'reference'), needed(tolerance, 'tolerance'));
  const { check, count, isCapable, doubt } = found;
  const { bias, s, cg, cgk } = check;
  return {
    intent: isCapable && !doubt ? 'success' : 'warning',
    lines: [
      ...(doubt ? [doubt] : []),
      `Cg ${cg.toFixed(2)}, Cgk ${cgk.toFixed(2)}: ${isCapable ? 'capable' : 'not capable'} (${CAPABLE} or more, common practice).`,
      `${count} readings: bias ${bias.toDecimalPlaces(5)}, s ${s.toDecimalPlaces(5)}. In a sheet: HOSE.GAUGECHECK.`,
    ],
  };
}

function studyText(values: Values, tolerance: string): Said {
  const { study, parts, repeats, finding } = studyOfGauge(
    values,
    tolerance.trim() === '' ? undefined : needed(tolerance, 'tolerance'),
  );
  const isGood = finding.endsWith('good');
  return {
    intent: isGood && !finding.includes('not good') ? 'success' : 'warning',
    lines: [
      `Repeatability ${finding} (10 % and 30 %, common practice).`,
      `${parts} parts, ${repeats} readings each; ${study.distinctCategories ?? 'many'} distinct categories. One person: differences between people are not tested. In a sheet: HOSE.GAUGESTUDY.`,
    ],
  };
}

/** A gauge checked on a reference piece, or studied by one person, from the selected readings. */
export function GaugeStudies({ workbook }: { readonly workbook: Workbook }) {
  const styles = useStyles();
  const [reference, setReference] = useState('');
  const [tolerance, setTolerance] = useState('');
  const [said, setSaid] = useState<Said>();
  const run = async (work: (values: Values) => Said) => {
    try {
      setSaid(work((await workbook.selection()).values));
    } catch (error) {
      setSaid({ intent: 'error', lines: [errorSentence(error)] });
    }
  };
  const field = (label: string, hint: string, value: string, onValue: (value: string) => void) => (
    <Field label={label} hint={hint}>
      <Input className={styles.narrow} value={value} onChange={(_, { value: typed }) => onValue(typed)} />
    </Field>
  );
  return (
    <section className={styles.section} aria-label="Gauge check and study">
      <Body1>
        Select readings in the sheet: ten or more of one reference piece, or a part a row with its readings side by side.
      </Body1>
      <div className={styles.grid}>
        {field('Reference', 'Known size, for the check', reference, setReference)}
        {field('Tolerance, full width', 'In the unit of the readings', tolerance, setTolerance)}
      </div>
      <div className={styles.row}>
        <Button onClick={() => void run(values => checkText(values, reference, tolerance))}>Check on the reference</Button>
        <Button onClick={() => void run(values => studyText(values, tolerance))}>Study by one person</Button>
      </div>
      <div role="status">
        {said && (
          <MessageBar intent={said.intent} layout="multiline">
            <MessageBarBody>
              {said.lines.map(line => (
                <div key={line}>{line}</div>
              ))}
            </MessageBarBody>
          </MessageBar>
        )}
      </div>
      <Caption1>Zero the caliper, wipe its jaws, lift it off for each reading.</Caption1>
    </section>
  );
}
