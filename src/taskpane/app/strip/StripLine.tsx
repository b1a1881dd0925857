import { Button, makeStyles, mergeClasses, tokens } from '@fluentui/react-components';
import { ChevronDownRegular, ChevronUpRegular, ErrorCircleRegular } from '@fluentui/react-icons';
import { cellSummary } from '../../../sheets/explain/cellSummary';
import type { ExplainedCellView } from './useExplainedCell';

const useStyles = makeStyles({
  line: {
    flex: '1 1 100px',
    minWidth: 0,
    minHeight: '36px',
    justifyContent: 'start',
    gap: tokens.spacingHorizontalS,
    borderRadius: 0,
    fontWeight: tokens.fontWeightRegular,
  },
  text: { flex: '1 1 0', minWidth: 0, overflow: 'hidden', textOverflow: 'ellipsis', whiteSpace: 'nowrap', textAlign: 'start' },
  wrong: { color: tokens.colorStatusDangerForeground1 },
  sign: { flexShrink: 0, fontSize: tokens.fontSizeBase400 },
});

const summaryOf = (view: ExplainedCellView) => {
  if (view.status === 'loading') return { text: 'Reading the selected cell', isWrong: false };
  if (view.status === 'failed') return { text: `The selection cannot be read: ${view.reason}`, isWrong: true };
  return cellSummary(view.cell, view.row);
};

interface Props {
  readonly view: ExplainedCellView;
  readonly isOpen: boolean;
  /** Id of what is folded away. */
  readonly controls: string;
  onToggle(): void;
}

/** The strip's one line, which is the button that folds and unfolds it. */
export function StripLine({ view, isOpen, controls, onToggle }: Props) {
  const styles = useStyles();
  const { text, isWrong } = summaryOf(view);
  return (
    <Button
      className={styles.line}
      appearance="subtle"
      icon={isOpen ? <ChevronDownRegular /> : <ChevronUpRegular />}
      aria-expanded={isOpen}
      aria-controls={isOpen ? controls : undefined}
      onClick={onToggle}
    >
      {isWrong && <ErrorCircleRegular className={mergeClasses(styles.sign, styles.wrong)} />}
      <span className={mergeClasses(styles.text, isWrong && styles.wrong)}>{text}</span>
    </Button>
  );
}
