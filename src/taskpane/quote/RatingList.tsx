import { Accordion, AccordionHeader, AccordionItem, AccordionPanel, Link, makeStyles } from '@fluentui/react-components';
import { isReady, type JobLine } from '../../sheets/jobs/jobLine';
import { FLUID_NOT_CHECKED, ratingText } from '../../sheets/jobs/lineRating';

const useStyles = makeStyles({ list: { margin: 0, paddingLeft: '1.2em' } });

interface Props {
  readonly lines: readonly JobLine[];
  readonly onShow: (row: number) => void;
}

/** Working pressure of each line that can be quoted, at its temperature, and what has not been checked. */
export function RatingList({ lines, onShow }: Props) {
  const styles = useStyles();
  const ready = lines.filter(isReady);
  if (ready.length === 0) return null;
  const open = ready.filter(({ fluid }) => fluid === '').length;
  const note = open > 0 ? `, ${FLUID_NOT_CHECKED} in ${open}` : '';
  return (
    <Accordion collapsible>
      <AccordionItem value="ratings">
        <AccordionHeader as="h2">
          Ratings of {ready.length} {ready.length === 1 ? 'line' : 'lines'}
          {note}
        </AccordionHeader>
        <AccordionPanel>
          <ul className={styles.list} aria-label="Ratings">
            {ready.map(line => (
              <li key={`${line.sheet} ${line.row}`}>
                <Link inline onClick={() => onShow(line.row)}>
                  Row {line.row}
                </Link>
                : {line.hose}, {ratingText(line)}
              </li>
            ))}
          </ul>
        </AccordionPanel>
      </AccordionItem>
    </Accordion>
  );
}
