import { Body1, Button, Caption1, CompoundButton, Link, makeStyles, Subtitle1, tokens } from '@fluentui/react-components';
import type { SampleFile } from '../../controls/viewProps';
import { useFocusWhenLost } from '../../controls/useFocusWhenLost';
import { people, type Person } from './people';
import { SampleOffer } from './SampleOffer';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM },
  heading: { margin: 0 },
  link: { fontSize: 'inherit', lineHeight: 'inherit' },
  person: { justifyContent: 'flex-start', textAlign: 'start', maxWidth: 'none' },
  own: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
});

interface Props {
  readonly person: Person | undefined;
  readonly sample: SampleFile;
  readonly onChoose: (person: Person | undefined) => void;
  /** Goes to the view that suits the person's own sheet. */
  readonly onOwnSheet: (person: Person) => void;
}

function Question({ onChoose }: Pick<Props, 'onChoose'>) {
  const styles = useStyles();
  return (
    <>
      <Body1>This workbook is empty. Choose your work, and Benchrow opens where it begins.</Body1>
      {people.map(person => (
        <CompoundButton
          key={person.id}
          className={styles.person}
          size="small"
          secondaryContent={person.wants}
          onClick={() => onChoose(person)}
        >
          {person.title}
        </CompoundButton>
      ))}
    </>
  );
}

/** In an empty workbook: whose work it is, then the sample as a new workbook or the way to one's own sheet. */
export function StartView({ person, sample, onChoose, onOwnSheet }: Props) {
  const styles = useStyles();
  const section = useFocusWhenLost<HTMLElement>(person?.id);
  return (
    <section ref={section} tabIndex={-1} className={styles.view} aria-labelledby="start-heading">
      <Subtitle1 as="h2" id="start-heading" className={styles.heading}>
        {person ? person.title : 'Which work is yours?'}
      </Subtitle1>
      {person ? (
        <>
          <SampleOffer sample={sample} />
          <div className={styles.own}>
            <Body1>Or open {person.ownSheet}, in Excel, or paste it into this workbook. Nothing has to move into ours.</Body1>
            <Button onClick={() => onOwnSheet(person)}>Go on with my own sheet</Button>
          </div>
          <Caption1>
            This computer remembers your choice.{' '}
            <Link inline as="button" className={styles.link} onClick={() => onChoose(undefined)}>
              Choose other work
            </Link>
          </Caption1>
        </>
      ) : (
        <Question onChoose={onChoose} />
      )}
    </section>
  );
}
