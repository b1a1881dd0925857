import {
  Button,
  Link,
  makeStyles,
  MessageBar,
  MessageBarBody,
  MessageBarTitle,
  Subtitle2,
  tokens,
} from '@fluentui/react-components';
import type { SinceSent } from '../../sheets/quote/sentQuotes';
import type { Workbook } from '../../workbook/workbook';

const useStyles = makeStyles({ list: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS } });

interface Props {
  readonly workbook: Workbook;
  /** The newest first. */
  readonly sent: readonly SinceSent[];
  readonly onLook: () => void;
}

const unchanged = (isCopied: boolean) =>
  isCopied ? 'Prices are as sent. Its lines are copies: changes in the job sheet do not show here.' : 'As sent.';

/** Quotes that went to customers, each with what has changed in the job sheet or the prices since. */
export function SentList({ workbook, sent, onLook }: Props) {
  const styles = useStyles();
  if (sent.length === 0) return null;
  return (
    <div className={styles.list}>
      <Subtitle2 as="h3">Quotes that were sent</Subtitle2>
      <div role="status" className={styles.list}>
        {sent.map(({ paper, day, changes, isCopied }) => (
          <MessageBar key={paper} intent={changes.length > 0 ? 'warning' : 'success'} layout="multiline">
            <MessageBarBody>
              <MessageBarTitle>{changes.length > 0 ? 'Changed since it was sent' : 'Unchanged'}</MessageBarTitle>
              <Link inline onClick={() => void workbook.select({ sheet: paper, address: 'A1' })}>
                {paper}
              </Link>
              , {day}. {changes.length === 0 && unchanged(isCopied)}
              {changes.map(sentence => (
                <div key={sentence}>{sentence}</div>
              ))}
            </MessageBarBody>
          </MessageBar>
        ))}
      </div>
      <Button onClick={onLook}>Compare again</Button>
    </div>
  );
}
