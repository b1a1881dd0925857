import { MessageBar, MessageBarBody } from '@fluentui/react-components';
import type { GatheredRecords } from '../../sheets/inspection/gatherRecords';
import type { TestResult } from '../../sheets/inspection/inspectionRecord';
import { recordResult } from '../../sheets/inspection/recordResult';

interface Props {
  readonly gathered: GatheredRecords;
  readonly result: TestResult;
}

/** What the records come to, before any button: what is in spec, what lacks something, what cannot be released, and overdue gauges. */
export function RecordResults({ gathered: { records, refusals }, result }: Props) {
  const results = records.map(record => ({ title: record.title, ...recordResult(record, result) }));
  const of = (kind: string) => results.filter(each => each.kind === kind);
  const rejected = of('rejected');
  return (
    <>
      {refusals.length > 0 && (
        <MessageBar intent="error" layout="multiline">
          <MessageBarBody>No record with a gauge that was overdue: {refusals.join('; ')}.</MessageBarBody>
        </MessageBar>
      )}
      <MessageBar intent={rejected.length > 0 ? 'error' : 'info'} layout="multiline" role="status">
        <MessageBarBody>
          Of {records.length} {records.length === 1 ? 'record' : 'records'}: {of('in spec').length} in spec, {of('open').length}{' '}
          not complete, {rejected.length} rejected.
          {rejected.map(({ title, sentence }) => (
            <div key={`${title} ${sentence}`}>
              {title}: {sentence}
            </div>
          ))}
        </MessageBarBody>
      </MessageBar>
    </>
  );
}
