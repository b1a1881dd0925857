import { useMemo, useState } from 'react';
import { fillRows, missingIn, type ReadRows } from '../../sheets/columns/fillRows';
import type { Workbook } from '../../workbook/workbook';
import { FillFormulas } from './FillFormulas';
import { ToldBar, type Told } from './ToldBar';
import { errorSentence } from '../../workbook/errorSentence';

interface Props {
  readonly workbook: Workbook;
  /** Tables of one sheet, as they were read. */
  readonly tables: readonly ReadRows[];
  /** Formulas were written: read the sheet again. */
  readonly onFilled: () => void;
}

/** Offers to fill the columns of ours in rows that were appended since, wherever such a table is read. */
export function FillRows({ workbook, tables, onFilled }: Props) {
  const [message, setTold] = useState<Told>();
  const [isBusy, setIsBusy] = useState(false);
  const missing = useMemo(() => missingIn(tables), [tables]);
  const fill = async () => {
    setIsBusy(true);
    try {
      setTold({ intent: 'success', text: await fillRows(workbook, tables) });
      onFilled();
    } catch (error) {
      setTold({ intent: 'error', text: errorSentence(error) });
    } finally {
      setIsBusy(false);
    }
  };
  return (
    <>
      <FillFormulas missing={missing} busy={isBusy} onFill={() => void fill()} />
      {message && <ToldBar message={message} />}
    </>
  );
}
