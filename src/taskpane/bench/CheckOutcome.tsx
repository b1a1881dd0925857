import { makeStyles, MessageBar, MessageBarBody, Text, tokens } from '@fluentui/react-components';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { asSentence } from '../../core/asSentence';
import { cellNumberOf, type CheckResult } from '../../sheets/machines/machineCheck';

const useStyles = makeStyles({
  large: { fontSize: tokens.fontSizeBase400, lineHeight: tokens.lineHeightBase400 },
});

interface Props {
  readonly result: CheckResult | undefined;
  readonly unit: LengthUnit;
  /** True once it was to be written: what is missing is a mistake from then on. */
  readonly isAsked: boolean;
  readonly problem: string | undefined;
  /** Whether machine and reference set-up have their names. */
  readonly isNamed: boolean;
}

const Mistake = ({ children }: { readonly children: string | undefined }) => (
  <MessageBar intent="error" layout="multiline" role="alert">
    <MessageBarBody>{children}</MessageBarBody>
  </MessageBar>
);

/** How far the machine has moved, or what is missing to say it. */
export function CheckOutcome({ result, unit, isAsked, problem, isNamed }: Props) {
  const styles = useStyles();
  return (
    <>
      {result ? (
        <div role="status">
          <Text block className={styles.large} weight="semibold">
            {result.sentence}
          </Text>
          <Text block>
            Expected {result.expected.toString()} {unit}, mean of {result.readings.length} readings {cellNumberOf(result.mean)}{' '}
            {unit}.
          </Text>
        </div>
      ) : (
        isAsked && <Mistake>{problem && asSentence(problem)}</Mistake>
      )}
      {isAsked && !isNamed && <Mistake>Name the machine and the reference set-up first.</Mistake>}
    </>
  );
}
