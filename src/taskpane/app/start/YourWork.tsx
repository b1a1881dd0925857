import { Button, Caption1, Link, makeStyles, tokens } from '@fluentui/react-components';
import { people, type Person } from './people';

const useStyles = makeStyles({
  line: {
    display: 'flex',
    alignItems: 'center',
    gap: tokens.spacingHorizontalXS,
    marginBottom: tokens.spacingVerticalS,
    color: tokens.colorNeutralForeground2,
  },
  link: { fontSize: 'inherit', lineHeight: 'inherit' },
  words: { flex: '1 1 0' },
});

interface Props {
  readonly onChoose: (person: Person) => void;
  readonly onDismiss: () => void;
}

/** One quiet line above the views of a filled workbook: leads to the view of one's work, and is put away for good. */
export function YourWork({ onChoose, onDismiss }: Props) {
  const styles = useStyles();
  return (
    <div className={styles.line} role="group" aria-label="Your work">
      <Caption1 className={styles.words}>
        Open Benchrow for:{' '}
        {people.map((person, index) => (
          <span key={person.id}>
            {index > 0 && ' · '}
            <Link inline as="button" className={styles.link} onClick={() => onChoose(person)}>
              {person.title}
            </Link>
          </span>
        ))}
      </Caption1>
      <Button size="small" appearance="subtle" aria-label="Put this line away" onClick={onDismiss}>
        ✕
      </Button>
    </div>
  );
}
