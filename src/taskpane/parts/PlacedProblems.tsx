import { Button, Link, makeStyles, MessageBar, MessageBarBody, MessageBarTitle, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import type { PlacedProblem } from '../../sheets/parts/placedProblem';

const FIRST = 8;
const MORE = 50;

const useStyles = makeStyles({
  list: { margin: 0, paddingLeft: tokens.spacingHorizontalL, overflowWrap: 'anywhere' },
});

interface Props {
  readonly workbook: Workbook;
  readonly title: string;
  readonly problems: readonly PlacedProblem[];
}

/** Problems of tables, each with its place; one that stands in this workbook leads to its cell. */
export function PlacedProblems({ workbook, title, problems }: Props) {
  const styles = useStyles();
  const [shown, setShown] = useState(FIRST);
  if (problems.length === 0) return null;
  const rest = problems.length - shown;
  return (
    <MessageBar intent="warning" layout="multiline">
      <MessageBarBody>
        <MessageBarTitle>{title}</MessageBarTitle>
        <ul className={styles.list}>
          {problems.slice(0, shown).map(({ place, at, sentence }, index) => (
            <li key={index}>
              {at ? (
                <Link inline onClick={() => void workbook.select(at)}>
                  {place}
                </Link>
              ) : (
                place
              )}
              : {sentence}
            </li>
          ))}
        </ul>
        {rest > 0 && (
          <Button size="small" appearance="transparent" onClick={() => setShown(shown + MORE)}>
            Show {Math.min(rest, MORE)} more of {rest}
          </Button>
        )}
      </MessageBarBody>
    </MessageBar>
  );
}
