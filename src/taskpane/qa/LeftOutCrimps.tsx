import { Caption1, Checkbox } from '@fluentui/react-components';
import { crimpMark, withMark, type AnalysisMemory } from '../../sheets/analysis/analysisMemory';
import type { MeasuredCrimp } from '../../sheets/crimps/crimpRow';

interface Props {
  readonly crimps: readonly MeasuredCrimp[];
  readonly memory: AnalysisMemory;
  readonly onDecided: (memory: AnalysisMemory) => void;
}

/** The crimps that somebody left out for good; each can be taken back. */
export function LeftOutCrimps({ crimps, memory, onDecided }: Props) {
  if (crimps.length === 0) return null;
  return (
    <div>
      <Caption1 block>
        {crimps.length === 1 ? '1 crimp is' : `${crimps.length} crimps are`} left out of everything below, as you said. The sheet
        still has {crimps.length === 1 ? 'it' : 'them'}.
      </Caption1>
      {crimps.map(crimp => (
        <Checkbox
          key={crimpMark(crimp)}
          label={`Left out: row ${crimp.row}${crimp.end ? `, end ${crimp.end}` : ''}, ${crimp.combination}`}
          checked
          onChange={() => onDecided({ ...memory, leftOut: withMark(memory.leftOut, crimpMark(crimp), false) })}
        />
      ))}
    </div>
  );
}
