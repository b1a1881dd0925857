import { Button, MessageBar, MessageBarActions, MessageBarBody } from '@fluentui/react-components';
import { useEffect, useState } from 'react';
import { canRefreshFunctions, refreshesFunctions, refreshFunctions } from '../../host/excel/functionsCache';
import { registeredFunctions, registeredVersion } from '../../workbook/registeredFunctions';
import { useStored } from '../controls/useStored';
import { errorSentence } from '../../workbook/errorSentence';

/** What a new release without force does: Excel looks for it once a day. */
const A_DAY = 'Excel fetches the new ones within 24 hours.';
const ANEW = 'Save the workbook, close it and open it again: Excel then fetches the functions anew.';

const OLDER = 'The worksheet functions are of another version than this pane: new functions or arguments may be missing.';
const UPDATED = 'Benchrow was updated: Excel may still list the functions of the version before.';

/**
 * Compares the version of the pane with that of the worksheet functions, which may be a day older (see functionsCache), and says what to do.
 * Excel's own copy of functions.json cannot be read, so the first start after an update is told, too.
 * @param version of the pane
 */
export function FunctionsVersion({ version }: { readonly version: string }) {
  const [{ seen }, store] = useStored('version', { seen: '' });
  const [message, setMessage] = useState('');
  const isOlder = registeredFunctions() !== undefined && registeredVersion() !== version;
  const isUpdated = seen !== '' && seen !== version;
  useEffect(() => {
    if (seen === '') store({ seen: version });
    // Forced once, it need not be forced at each opening.
    if (!isOlder && !isUpdated && refreshesFunctions()) void refreshFunctions(false).catch(() => undefined);
  }, [seen, store, version, isOlder, isUpdated]);
  if (!isOlder && !isUpdated && message === '') return null;
  const fetchAnew = async () => {
    try {
      await refreshFunctions(true);
      setMessage(ANEW);
      store({ seen: version });
    } catch (error) {
      setMessage(`Excel did not take it: ${errorSentence(error)}`);
    }
  };
  return (
    <MessageBar intent={isOlder ? 'warning' : 'info'} layout="multiline">
      <MessageBarBody role="status">{message || `${isOlder ? OLDER : UPDATED} ${A_DAY}`}</MessageBarBody>
      {message === '' && (
        <MessageBarActions>
          {canRefreshFunctions() && (
            <Button size="small" onClick={() => void fetchAnew()}>
              Fetch them now
            </Button>
          )}
          {!isOlder && (
            <Button size="small" onClick={() => store({ seen: version })}>
              Close
            </Button>
          )}
        </MessageBarActions>
      )}
    </MessageBar>
  );
}
