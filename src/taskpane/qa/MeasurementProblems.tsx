import { Link, MessageBar, MessageBarBody, MessageBarTitle } from '@fluentui/react-components';
import { useState } from 'react';
import type { RangeAddress } from '../../workbook/workbook';
import type { MeasurementProblem } from '../../sheets/crimps/measurements';

const FIRST = 8;

interface Props {
  readonly problems: readonly MeasurementProblem[];
  readonly onShow: (at: RangeAddress) => void;
}

/** Rows that cannot be used, each with its sentence and a jump to the cell. */
export function MeasurementProblems({ problems, onShow }: Props) {
  const [all, setAll] = useState(false);
  if (problems.length === 0) return null;
  const shown = all ? problems : problems.slice(0, FIRST);
  return (
    <MessageBar intent="warning" layout="multiline">
      <MessageBarBody>
        <MessageBarTitle>{problems.length === 1 ? '1 crimp' : `${problems.length} crimps`} cannot be used</MessageBarTitle>
        {shown.map(({ row, sentence, at }) => (
          <div key={`${at.address} ${sentence}`}>
            <Link inline onClick={() => onShow(at)}>
              Row {row}
            </Link>
            : {sentence}
          </div>
        ))}
        {shown.length < problems.length && <Link onClick={() => setAll(true)}>Show all {problems.length}</Link>}
      </MessageBarBody>
    </MessageBar>
  );
}
