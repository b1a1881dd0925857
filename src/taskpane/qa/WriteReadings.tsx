import { Caption1, Link, MessageBar, MessageBarBody } from '@fluentui/react-components';
import { useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import { today } from '../../sheets/table/today';
import { freeSheetName } from '../../sheets/print/freeSheetName';
import { WriteButton } from '../controls/WriteButton';
import type { Analysed } from '../../sheets/analysis/analysisOf';
import type { CrimpSheet } from '../../sheets/crimps/crimpSheet';
import { readingsSheet } from '../../sheets/analysis/readingsSheet';
import { errorSentence } from '../../workbook/errorSentence';

interface Props {
  readonly workbook: Workbook;
  readonly sheet: CrimpSheet;
  readonly analysed: Analysed;
}

type Outcome = { readonly sheet: string } | { readonly reason: string };

/** Writes the results as a new sheet: values, and in Excel charts of its own. */
export function WriteReadings({ workbook, sheet: from, analysed }: Props) {
  const [outcome, setOutcome] = useState<Outcome>();
  const [isBusy, setIsBusy] = useState(false);
  const write = async () => {
    setIsBusy(true);
    try {
      const sheet = freeSheetName('Readings', await workbook.sheets(), today());
      const source = [`Sheet ${from.sheet}`, from.catalogue?.handle].filter(Boolean).join(', ');
      await workbook.write(readingsSheet(sheet, analysed, { source, today: today() }));
      setOutcome({ sheet });
    } catch (error) {
      setOutcome({ reason: errorSentence(error) });
    }
    setIsBusy(false);
  };
  return (
    <>
      <div>
        <WriteButton appearance="primary" disabled={isBusy} onClick={() => void write()}>
          Write results as a new sheet
        </WriteButton>
      </div>
      <Caption1>
        {workbook.host === 'excel'
          ? 'Values, and Excel’s own charts beside them.'
          : 'Values only: the try-out sheet has no charts of its own; in Excel they are added.'}
      </Caption1>
      <div role="status">
        {outcome && (
          <MessageBar intent={'sheet' in outcome ? 'success' : 'error'} layout="multiline">
            <MessageBarBody>
              {'sheet' in outcome ? (
                <>
                  Written:{' '}
                  <Link inline onClick={() => void workbook.select({ sheet: outcome.sheet, address: 'A1' })}>
                    {outcome.sheet}
                  </Link>
                </>
              ) : (
                outcome.reason
              )}
            </MessageBarBody>
          </MessageBar>
        )}
      </div>
    </>
  );
}
