import { Caption1, makeStyles, Subtitle2, tokens } from '@fluentui/react-components';
import type { Decimal } from '../../core/units/decimal';
import { lengthText } from '../../sheets/table/lengthText';
import type { PickList } from '../../sheets/week/pickList';
import { reelText } from '../../sheets/week/pickReels';

const useStyles = makeStyles({
  list: { margin: 0, paddingLeft: tokens.spacingHorizontalL, overflowWrap: 'anywhere' },
  note: { display: 'block' },
});

/** What to fetch for the lines: hose with its reels, couplings, ferrules, sleeves. */
export function PickTable({ picks: { items, unit, problems } }: { readonly picks: PickList }) {
  const styles = useStyles();
  const text = (length: Decimal) => lengthText(length, unit);
  if (items.length === 0) return null;
  return (
    <section aria-label="Pick list">
      <Subtitle2>Pick list</Subtitle2>
      <ul className={styles.list}>
        {items.map(({ kind, part, count, length, lines, reels }) => (
          <li key={`${kind} ${part}`}>
            {`${kind} ${part}: ${length ? `${text(length)} ${unit}` : count} `}
            <Caption1>
              {`(line ${lines.map(({ line }) => line).join(', ')})`}
              {reels.map(reel => (
                <span className={styles.note} key={`${reel.place} ${reel.reel} ${reel.lot} ${reel.length}`}>
                  {reelText(reel, unit, text)}
                </span>
              ))}
            </Caption1>
          </li>
        ))}
      </ul>
      {problems.map(problem => (
        <Caption1 className={styles.note} key={problem}>
          {problem}
        </Caption1>
      ))}
    </section>
  );
}
