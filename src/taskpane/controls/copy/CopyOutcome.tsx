import { MessageBar, MessageBarBody } from '@fluentui/react-components';
import type { Workbook } from '../../../workbook/workbook';
import type { Outcome } from '../useRun';
import { WrittenBar } from '../WrittenBar';
import type { MadeCopy } from './useCopy';
import { countedText } from '../../../core/countedText';

interface Props {
  readonly workbook: Workbook;
  readonly outcome: Outcome<MadeCopy>;
}

/** What was copied, what was left out, and which formulas became values. */
export function CopyOutcome({ workbook, outcome }: Props) {
  const made = outcome.status === 'done' ? outcome.result : undefined;
  return (
    <>
      <WrittenBar workbook={workbook} outcome={outcome} sheets={made?.written} failure="No copy was made: " />
      {made && (
        <MessageBar intent="info" layout="multiline">
          <MessageBarBody>
            {!made.written && 'Downloaded. '}
            {countedText(made.planned.copy.sheets.length - 1, 'sheet')} and “{made.planned.copy.sheets[0]!.name}”.{' '}
            {made.planned.formulas > 0 && `${countedText(made.planned.formulas, 'formula')}. `}
            {made.planned.kept.length > 0 && 'Coloured cells hold values; the sheet lists them. '}
            {made.planned.hidden.length > 0 && `${made.planned.hidden.join(' ')} `}
            {made.planned.leftOut.length > 0 && `Left out: ${made.planned.leftOut.join(' ')}`}
          </MessageBarBody>
        </MessageBar>
      )}
    </>
  );
}
