import { makeStyles, mergeClasses, tokens } from '@fluentui/react-components';
import { useEffect } from 'react';
import type { FunctionMetadata } from '../../../workbook/functionMetadata';
import type { Workbook } from '../../../workbook/workbook';
import { useStored } from '../../controls/useStored';
import type { Wanted } from '../wanted';
import { ExplainedCell } from './ExplainedCell';
import { ScanField } from './ScanField';
import { StripLine } from './StripLine';
import { useExplainedCell } from './useExplainedCell';

const useStyles = makeStyles({
  strip: {
    flexShrink: 0,
    display: 'flex',
    flexDirection: 'column',
    borderTop: `1px solid ${tokens.colorNeutralStroke1}`,
    backgroundColor: tokens.colorNeutralBackground2,
  },
  line: { flexShrink: 0, display: 'flex', flexWrap: 'wrap', alignItems: 'center' },
  open: { maxHeight: '50%', '@media (max-height: 400px)': { maxHeight: 'none' } },
});

interface Props {
  readonly workbook: Workbook;
  readonly functions: readonly FunctionMetadata[];
  readonly wanted: Wanted | undefined;
  /** The text of a tag was scanned or typed. */
  onScan(text: string): void;
}

const CONTENT = 'strip-content';

/** The strip at the bottom of the pane: one line about the selected cell, which unfolds to all that there is to say of it. */
export function Strip({ workbook, functions, wanted, onScan }: Props) {
  const styles = useStyles();
  const view = useExplainedCell(workbook, functions);
  const [{ isOpen }, store] = useStored('strip', { isOpen: false });
  useEffect(() => {
    if (wanted?.strip) store({ isOpen: wanted.strip === 'open' });
  }, [wanted, store]);
  return (
    <section className={mergeClasses(styles.strip, isOpen && styles.open)} aria-label="Selected cell">
      <div className={styles.line}>
        <StripLine view={view} isOpen={isOpen} controls={CONTENT} onToggle={() => store({ isOpen: !isOpen })} />
        <ScanField onScan={onScan} />
      </div>
      {isOpen && <ExplainedCell id={CONTENT} view={view} workbook={workbook} />}
    </section>
  );
}
