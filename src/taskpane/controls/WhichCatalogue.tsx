import { Button, makeStyles, MessageBar, MessageBarActions, MessageBarBody, tokens } from '@fluentui/react-components';
import { useCallback, useState } from 'react';
import { chooseCatalogue, workbookCatalogue, type WorkbookCatalogue } from '../../sheets/catalogue/workbookCatalogue';
import type { RangeAddress, Workbook } from '../../workbook/workbook';
import { useOnSheets } from './useOnSheets';
import { rangeText } from '../../workbook/a1';

const useStyles = makeStyles({
  bar: { marginBottom: tokens.spacingVerticalM },
  buttons: { flexWrap: 'wrap' },
});

interface Props {
  readonly workbook: Workbook;
  /** Another cell counts now: read again what comes from the catalogue. */
  readonly onChosen: () => void;
}

/** Asks which of several CATALOGUE cells counts, and tells which one does until that is answered; nothing where there is one. */
export function WhichCatalogue({ workbook, onChosen }: Props) {
  const styles = useStyles();
  const [found, setFound] = useState<WorkbookCatalogue>();
  const read = useCallback(async () => setFound(await workbookCatalogue(workbook).catch(() => undefined)), [workbook]);
  useOnSheets(workbook, read);
  if (!found?.isAsked) return null;
  const { cell, others } = found;
  const choose = async (at: RangeAddress) => {
    await chooseCatalogue(workbook, at);
    await read();
    onChosen();
  };
  return (
    <MessageBar className={styles.bar} intent="warning" layout="multiline">
      <MessageBarBody>
        This workbook has {others.length + 1} cells with =HOSE.CATALOGUE(…). The one in {rangeText(cell)} is used. Which one
        counts?
      </MessageBarBody>
      <MessageBarActions className={styles.buttons}>
        {[cell, ...others].map((at, index) => (
          <Button
            key={rangeText(at)}
            size="small"
            appearance={index === 0 ? 'primary' : 'secondary'}
            onClick={() => void choose(at)}
          >
            {rangeText(at)}
          </Button>
        ))}
      </MessageBarActions>
    </MessageBar>
  );
}
