import { Button, Checkbox, makeStyles, MessageBar, MessageBarBody, MessageBarTitle, tokens } from '@fluentui/react-components';
import type { Workbook } from '../../workbook/workbook';
import { crimpMark, listMark, withMark, type AnalysisMemory } from '../../sheets/analysis/analysisMemory';
import type { Finding } from '../../sheets/analysis/finding';

const useStyles = makeStyles({
  list: { margin: 0, paddingLeft: '1.1em' },
  doubtful: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalXS, marginTop: tokens.spacingVerticalXS },
});

/** So many single crimps are listed; the others follow once these are settled. */
const MOST = 12;

interface Props {
  readonly workbook: Workbook;
  readonly finding: Finding;
  readonly sheet: string;
  readonly machine: string;
  readonly memory: AnalysisMemory;
  readonly onDecided: (memory: AnalysisMemory) => void;
}

/** One finding: what it is, what to do, what to measure next; what somebody has to decide about it can be decided here. */
export function FindingBar({ workbook, finding, sheet, machine, memory, onDecided }: Props) {
  const styles = useStyles();
  const { title, sentence, look, actions, next, facts, doubtful = [], kind } = finding;
  const lines = [...actions, ...next.map(each => (each.startsWith('Measure') ? each : `Next: ${each}`)), ...facts];
  return (
    <MessageBar intent={look} layout="multiline">
      <MessageBarBody>
        <MessageBarTitle>{title}</MessageBarTitle>
        <span>{sentence}</span>
        {lines.length > 0 && (
          <ul className={styles.list}>
            {lines.map(line => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        )}
        {kind === 'mixed' && (
          <Button
            size="small"
            onClick={() => onDecided({ ...memory, oneMachine: withMark(memory.oneMachine, listMark(sheet, machine), true) })}
          >
            They are all of one machine, one set of dies, one caliper
          </Button>
        )}
        {doubtful.length > 0 && (
          <div className={styles.doubtful}>
            {doubtful.slice(0, MOST).map(({ crimp, sentence: about }) => (
              <div key={`${crimp.row} ${crimp.end}`}>
                <div>{about}</div>
                <Checkbox
                  label={`Leave out row ${crimp.row}${crimp.end ? `, end ${crimp.end}` : ''} for good`}
                  checked={false}
                  onChange={() => onDecided({ ...memory, leftOut: withMark(memory.leftOut, crimpMark(crimp), true) })}
                />
                <Button
                  size="small"
                  appearance="transparent"
                  onClick={() => void workbook.select({ sheet, address: crimp.cells[0]!.address }).catch(() => undefined)}
                >
                  Show row {crimp.row}
                </Button>
              </div>
            ))}
            {doubtful.length > MOST && <div>and {doubtful.length - MOST} more; the written sheet has them all.</div>}
          </div>
        )}
      </MessageBarBody>
    </MessageBar>
  );
}
