import { Caption1, makeStyles, Subtitle2, tokens } from '@fluentui/react-components';
import type { Decimal } from '../../core/units/decimal';
import { lengthText } from '../../sheets/table/lengthText';
import { firstDue, type PickItem, type PickList } from '../../sheets/week/pickList';
import { reelText } from '../../sheets/week/pickReels';

const useStyles = makeStyles({
  list: { margin: 0, paddingLeft: tokens.spacingHorizontalL, overflowWrap: 'anywhere' },
  note: { display: 'block' },
});

function forText(item: PickItem): string {
  const due = firstDue(item);
  return `(line ${item.lines.map(({ line }) => line).join(', ')}${due && `; first due ${due}`})`;
}

/** What to fetch for the lines: hose with its reels, couplings, ferrules, sleeves. */
export function PickTable({ picks: { items, unit, problems } }: { readonly picks: PickList }) {
  const styles = useStyles();
  const text = (length: Decimal) => lengthText(length, unit);
  if (items.length === 0) return null;
  return (
    <section aria-label="Pick list">
      <Subtitle2>Pick list</Subtitle2>
      <ul className={styles.list}>
        {items.map(item => (
          <li key={`${item.kind} ${item.part}`}>
            {`${item.kind} ${item.part}: ${item.length ? `${text(item.length)} ${unit}` : item.count} `}
            <Caption1>
              {forText(item)}
              {item.reels.map(reel => (
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
