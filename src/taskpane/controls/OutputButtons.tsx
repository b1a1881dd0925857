import { Link, makeStyles, MessageBar, MessageBarBody, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import { WriteButton } from './WriteButton';

const useStyles = makeStyles({ row: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS } });

interface Props {
  readonly workbook: Workbook;
  /** Prints; resolves with a sentence where that is not possible. */
  readonly onPrint: () => Promise<string | undefined>;
  /** Writes a new sheet and gives its name. */
  readonly onWrite: () => Promise<string>;
  readonly printLabel: string;
  readonly writeLabel: string;
  /** What the written sheet lacks in this host. */
  readonly writtenNote?: string | undefined;
}

type Outcome = { readonly sheet: string } | { readonly reason: string } | undefined;

/** Print, or write as a new sheet; says what was written or why not. */
export function OutputButtons({ workbook, onPrint, onWrite, printLabel, writeLabel, writtenNote }: Props) {
  const styles = useStyles();
  const [outcome, setOutcome] = useState<Outcome>();
  const [isBusy, setIsBusy] = useState(false);
  const run = async (work: () => Promise<Outcome>) => {
    setIsBusy(true);
    try {
      setOutcome(await work());
    } catch (error) {
      setOutcome({ reason: error instanceof Error ? error.message : String(error) });
    }
    setIsBusy(false);
  };
  const print = async () => {
    const reason = await onPrint();
    return reason ? { reason } : undefined;
  };
  return (
    <>
      <div className={styles.row}>
        <WriteButton appearance="primary" disabled={isBusy} onClick={() => void run(print)}>
          {printLabel}
        </WriteButton>
        <WriteButton disabled={isBusy} onClick={() => void run(async () => ({ sheet: await onWrite() }))}>
          {writeLabel}
        </WriteButton>
      </div>
      <div role="status">
        {outcome && 'sheet' in outcome && (
          <MessageBar intent="success" layout="multiline">
            <MessageBarBody>
              Written:{' '}
              <Link inline onClick={() => void workbook.select({ sheet: outcome.sheet, address: 'A1' })}>
                {outcome.sheet}
              </Link>
              {writtenNote && `. ${writtenNote}`}
            </MessageBarBody>
          </MessageBar>
        )}
        {outcome && 'reason' in outcome && (
          <MessageBar intent="error" layout="multiline">
            <MessageBarBody>{outcome.reason}</MessageBarBody>
          </MessageBar>
        )}
      </div>
    </>
  );
}
