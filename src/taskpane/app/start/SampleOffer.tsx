import { Body1, Caption1, Link, makeStyles, MessageBar, MessageBarBody, tokens } from '@fluentui/react-components';
import type { SampleFile } from '../../controls/viewProps';
import { useRun } from '../../controls/useRun';
import { WriteButton } from '../../controls/WriteButton';

const useStyles = makeStyles({
  offer: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  address: { overflowWrap: 'anywhere' },
});

/** The file itself, for a browser: where Excel does not open it, or asks and is told no. */
function FileLink({ address }: { readonly address: string }) {
  const styles = useStyles();
  return (
    <Link inline href={address} target="_blank" rel="noreferrer" className={styles.address}>
      {address}
    </Link>
  );
}

/** Opens the sample as a new workbook; where this Excel cannot, says how to get it. */
export function SampleOffer({ sample }: { readonly sample: SampleFile }) {
  const styles = useStyles();
  const [outcome, run] = useRun<void>();
  const address = sample.address();
  const isBusy = outcome.status === 'busy';
  return (
    <div className={styles.offer}>
      <Body1>The sample: one week of an invented workshop, with jobs, parts, a rack, readings and a quote.</Body1>
      {sample.canOpen() ? (
        <WriteButton appearance="primary" disabled={isBusy} onClick={() => void run(sample.open)}>
          {isBusy ? 'Opening …' : 'Open the sample as a new workbook'}
        </WriteButton>
      ) : (
        <Body1>
          This Excel cannot open it from here. Download it in your browser, then open it in Excel: <FileLink address={address} />
        </Body1>
      )}
      <div role="status">
        {outcome.status === 'done' && (
          <MessageBar intent="success" layout="multiline">
            <MessageBarBody>
              The sample opens as a new workbook. Open Benchrow there, too: Home tab, button Benchrow. Excel on the web asks
              first. Nothing opened? Download the file: <FileLink address={address} />
            </MessageBarBody>
          </MessageBar>
        )}
        {outcome.status === 'failed' && (
          <MessageBar intent="error" layout="multiline">
            <MessageBarBody>
              The sample was not opened: {outcome.reason} Download it in your browser, then open it in Excel:{' '}
              <FileLink address={address} />
            </MessageBarBody>
          </MessageBar>
        )}
      </div>
      <Caption1>All its parts, dials and diameters are invented: never crimp from them.</Caption1>
    </div>
  );
}
