import { Body1, Caption1, Link, makeStyles, Subtitle2, tokens } from '@fluentui/react-components';
import type { OrderOfWork } from '../../sheets/week/orderOfWork';
import { itemText, settingText } from '../../sheets/week/weekText';

const useStyles = makeStyles({
  list: {
    display: 'flex',
    flexDirection: 'column',
    gap: tokens.spacingVerticalS,
    margin: 0,
    paddingLeft: tokens.spacingHorizontalXL,
  },
  note: { display: 'block' },
});

interface Props {
  readonly order: OrderOfWork;
  readonly onShow: (row: number) => void;
}

/** The settings of the machine in the order of work, each with the lines that are crimped with it. */
export function OrderGroups({ order, onShow }: Props) {
  const styles = useStyles();
  const machines = new Set(order.groups.map(({ machine }) => machine));
  return (
    <>
      <ol className={styles.list} aria-label="Order of work">
        {order.groups.map((group, index) => (
          <li key={index}>
            <Subtitle2>
              {machines.size > 1 && `${group.machine || 'No crimper named'}: `}
              {settingText(group)}
            </Subtitle2>
            {group.items.map(item => (
              <div key={`${item.line.row} ${item.ends.join('')}`}>
                <Link inline onClick={() => onShow(item.line.row)}>
                  {itemText(item)}
                </Link>
                <Caption1 className={styles.note}>{item.line.hose}</Caption1>
                {item.oneDial && <Caption1 className={styles.note}>{item.oneDial}. Try it on one trial piece.</Caption1>}
              </div>
            ))}
          </li>
        ))}
      </ol>
      {order.unknown.length > 0 && (
        <Body1>
          No die known, so not in the order:{' '}
          {order.unknown.map(({ row, line }) => (
            <span key={row}>
              <Link inline onClick={() => onShow(row)}>
                {line}
              </Link>{' '}
            </span>
          ))}
        </Body1>
      )}
    </>
  );
}
