import { Field, Radio, RadioGroup } from '@fluentui/react-components';
import { useState } from 'react';
import { CRIMP_HEADINGS } from '../../sheets/crimps/crimpHeadings';
import { JOB_HEADINGS } from '../../sheets/jobs/jobHeadings';
import type { Workbook } from '../../workbook/workbook';
import { HeadingsByHand } from '../controls/HeadingsByHand';

interface Props {
  readonly workbook: Workbook;
  readonly sheet: string;
  /** What a heading means is remembered: read the sheet again. */
  readonly onCorrected: () => void;
}

const KINDS = { jobs: JOB_HEADINGS, crimps: CRIMP_HEADINGS };

/** Of a sheet in which neither readings nor job lines were recognised: which of them it holds, and what its headings mean. */
export function RecordsByHand({ workbook, sheet, onCorrected }: Props) {
  const [kind, setKind] = useState<keyof typeof KINDS>('crimps');
  return (
    <HeadingsByHand workbook={workbook} of={KINDS[kind]} sheet={sheet} onCorrected={onCorrected}>
      <Field label={`Sheet ${sheet} has`}>
        <RadioGroup layout="horizontal" value={kind} onChange={(_, { value }) => setKind(value as keyof typeof KINDS)}>
          <Radio value="crimps" label="readings" />
          <Radio value="jobs" label="job lines" />
        </RadioGroup>
      </Field>
    </HeadingsByHand>
  );
}
