import { Field, Input } from '@fluentui/react-components';
import { useState } from 'react';
import { momentNumber } from '../../core/units/sheetDate';
import type { AnalysisMemory } from '../../sheets/analysis/analysisMemory';

interface Props {
  readonly sheet: string;
  readonly memory: AnalysisMemory;
  readonly onDecided: (memory: AnalysisMemory) => void;
}

/** The first day whose crimps count for the findings; remembered with the workbook, so that it is seen wherever it is in force. */
export function FromDay({ sheet, memory, onDecided }: Props) {
  const standing = memory.fromDay[sheet] ?? '';
  const [typed, setTyped] = useState<string>();
  const text = typed ?? standing;
  const isBad = text.trim() !== '' && momentNumber(text) === undefined;
  const settle = (value: string) => {
    setTyped(value);
    if (value.trim() !== '' && momentNumber(value) === undefined) return;
    const others = Object.fromEntries(Object.entries(memory.fromDay).filter(([name]) => name !== sheet));
    onDecided({ ...memory, fromDay: value.trim() === '' ? others : { ...others, [sheet]: value.trim() } });
  };
  return (
    <Field
      label="From day"
      size="small"
      hint="Findings count crimps from this day on. Blank: since the last recalibration in the Machine log, else all."
      validationState={isBad ? 'error' : 'none'}
      validationMessage={isBad ? 'A date, like 2026-03-14' : undefined}
    >
      <Input size="small" value={text} placeholder="2026-03-14" onChange={(_, { value }) => settle(value)} />
    </Field>
  );
}
