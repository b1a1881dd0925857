import { Caption1, MessageBar, MessageBarBody } from '@fluentui/react-components';
import type { Workbook } from '../../workbook/workbook';
import { JobsNote, type JobTicks } from '../controls/JobsNote';
import type { UnreadView } from '../controls/useSettledView';
import type { CardsRead } from './useCards';

interface Props {
  readonly workbook: Workbook;
  readonly view: CardsRead | UnreadView;
  readonly ticks: JobTicks;
  readonly onTicks: (ticks: JobTicks) => void;
  readonly onAnswered: () => void;
  readonly onShow: (row: number) => void;
}

/** What was read of the selected lines, or why nothing was. */
export function CardsNote({ view, ...rest }: Props) {
  if (view.status === 'loading') return <Caption1>Reading the job sheet …</Caption1>;
  if (view.status === 'failed') {
    return (
      <MessageBar intent="warning" layout="multiline">
        <MessageBarBody>{view.reason}</MessageBarBody>
      </MessageBar>
    );
  }
  return <JobsNote jobs={view.jobs} {...rest} />;
}
