import { Field, Input, Radio, RadioGroup } from '@fluentui/react-components';
import { asSentence } from '../../core/asSentence';
import type { CheckResult } from '../../sheets/machines/machineCheck';
import { advisedTurns, turnsMade, type ScrewTurned } from '../../sheets/machines/screwTurned';

interface Props {
  readonly result: CheckResult;
  readonly turned: ScrewTurned;
  readonly onTurned: (turned: ScrewTurned) => void;
  /** True once it was to be written: what is missing is a mistake from then on. */
  readonly isAsked: boolean;
}

function mistakeOf(result: CheckResult, turned: ScrewTurned): string | undefined {
  try {
    turnsMade(result, turned);
    return undefined;
  } catch (error) {
    return asSentence((error as Error).message);
  }
}

/** Advice and what was done are two things: whether somebody turned the screw after the check, and how far. */
export function ScrewQuestion({ result, turned, onTurned, isAsked }: Props) {
  const mistake = isAsked ? mistakeOf(result, turned) : undefined;
  const advised = advisedTurns(result)?.toString();
  return (
    <>
      <Field label="Was the screw turned?" validationMessage={turned.answer === '' ? mistake : undefined}>
        <RadioGroup
          layout="horizontal"
          value={turned.answer}
          onChange={(_, { value }) => onTurned({ ...turned, answer: value as ScrewTurned['answer'] })}
        >
          <Radio value="yes" label="Yes" />
          <Radio value="no" label="No" />
        </RadioGroup>
      </Field>
      {turned.answer === 'yes' && (
        <Field
          label="Turns made"
          hint={advised ? `+ is tighter. Blank: ${advised}, as advised` : '+ is tighter'}
          validationMessage={mistake}
        >
          <Input
            autoComplete="off"
            value={turned.turns}
            placeholder={advised}
            onChange={(_, { value }) => onTurned({ ...turned, turns: value })}
          />
        </Field>
      )}
    </>
  );
}
