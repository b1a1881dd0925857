import { Caption1, makeStyles, MessageBar, MessageBarBody, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import { SheetLinks } from './SheetLinks';
import type { HostServices } from './viewProps';
import { WriteButton } from './WriteButton';
import { errorSentence } from '../../workbook/errorSentence';

const useStyles = makeStyles({ row: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS } });

interface Props {
  readonly workbook: Workbook;
  readonly services: HostServices;
  /** The page to print, made of what is read now. */
  readonly page: () => Promise<string>;
  /** How the written sheet is printed where the host does not print: `print that sheet`. */
  readonly instead?: string;
  /** Writes a new sheet and gives its name. */
  readonly onWrite: () => Promise<string>;
  readonly printLabel: string;
  readonly writeLabel: string;
  /** What the written sheet lacks in this host. */
  readonly writtenNote?: string | undefined;
}

type Outcome = { readonly sheet: string } | { readonly reason: string } | undefined;

/** Print, or write as a new sheet; says what was written or why not. Where the host does not print, the sheet is what is offered. */
export function OutputButtons(props: Props) {
  const { workbook, services, page, onWrite, printLabel, writeLabel, writtenNote } = props;
  const { instead = 'print that sheet' } = props;
  const canPrint = services.canPrint();
  const styles = useStyles();
  const [outcome, setOutcome] = useState<Outcome>();
  const [isBusy, setIsBusy] = useState(false);
  const run = async (work: () => Promise<Outcome>) => {
    setIsBusy(true);
    try {
      setOutcome(await work());
    } catch (error) {
      setOutcome({ reason: errorSentence(error) });
    }
    setIsBusy(false);
  };
  const print = async () => {
    if (await services.print(await page())) return undefined;
    return { reason: `Nothing was printed: no print window opened here. Write it as a new sheet and ${instead}.` };
  };
  return (
    <>
      <div className={styles.row}>
        {canPrint && (
          <WriteButton appearance="primary" disabled={isBusy} onClick={() => void run(print)}>
            {printLabel}
          </WriteButton>
        )}
        <WriteButton
          appearance={canPrint ? 'secondary' : 'primary'}
          disabled={isBusy}
          onClick={() => void run(async () => ({ sheet: await onWrite() }))}
        >
          {writeLabel}
        </WriteButton>
      </div>
      {!canPrint && <Caption1 block>This Excel does not print from a pane: write a new sheet and {instead}.</Caption1>}
      <div role="status">
        {outcome && 'sheet' in outcome && (
          <MessageBar intent="success" layout="multiline">
            <MessageBarBody>
              Written: <SheetLinks workbook={workbook} sheets={[outcome.sheet]} />
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
