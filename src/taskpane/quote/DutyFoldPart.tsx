import { makeStyles, tokens } from '@fluentui/react-components';
import { useState, type ReactNode } from 'react';

const useStyles = makeStyles({
  title: { cursor: 'pointer', overflowWrap: 'anywhere' },
  summary: { color: tokens.colorNeutralForeground2 },
  fields: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS, paddingTop: tokens.spacingVerticalS },
});

interface Props {
  readonly title: string;
  /** What stands in it, said while it is folded too. */
  readonly summary: string;
  /** Open when it is first shown. */
  readonly startsOpen: boolean;
  /** A field in it has to be put right: it opens, and stays open. */
  readonly hasMistake: boolean;
  readonly children: ReactNode;
}

/** A part of the form that folds. */
export function DutyFoldPart({ title, summary, startsOpen, hasMistake, children }: Props) {
  const styles = useStyles();
  const [isOpen, setIsOpen] = useState(startsOpen);
  if (hasMistake && !isOpen) setIsOpen(true);
  return (
    <section aria-label={title}>
      <details open={isOpen} onToggle={event => setIsOpen(event.currentTarget.open)}>
        <summary className={styles.title}>
          {title}
          {summary && <span className={styles.summary}>: {summary}</span>}
        </summary>
        <div className={styles.fields}>{children}</div>
      </details>
    </section>
  );
}
