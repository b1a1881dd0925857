import { Link, MessageBar, MessageBarBody, MessageBarTitle } from '@fluentui/react-components';
import type { RowProblem } from '../../sheets/table/rowProblem';

interface Props {
  readonly title: string;
  readonly problems: readonly RowProblem[];
  readonly onShow: (row: number) => void;
}

/** Rows that could not be used, each with its sentence and a way to its cell. */
export function ProblemList({ title, problems, onShow }: Props) {
  if (problems.length === 0) return null;
  return (
    <MessageBar intent="warning" layout="multiline" role="status">
      <MessageBarBody>
        <MessageBarTitle>{title}</MessageBarTitle>
        {problems.map(({ row, sentence }) => (
          <div key={row}>
            <Link inline onClick={() => onShow(row)}>
              Row {row}
            </Link>
            : {sentence}
          </div>
        ))}
      </MessageBarBody>
    </MessageBar>
  );
}
