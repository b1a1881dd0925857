import { Button, Caption1, makeStyles, MessageBar, MessageBarActions, MessageBarBody } from '@fluentui/react-components';
import type { OfficeFile } from '../../workbook/officeFile';
import { OfficeOfferText, openOffer } from './OfficeOfferText';
import type { OfficeView } from './useOfficeOffer';

const useStyles = makeStyles({ line: { overflowWrap: 'anywhere' }, buttons: { flexWrap: 'wrap' } });

/** Why the office's catalogue is not offered, in a sentence; undefined where it is, or where the office has none. */
function quietSentence(file: OfficeFile | undefined, offer: OfficeView['offer']): string | undefined {
  if (file?.status === 'unreachable') {
    return `The office’s catalogue cannot be reached (${file.reason}). Nothing changes: this workbook uses its own parts data.`;
  }
  if (file?.status === 'unusable') return `The office’s catalogue is not used: ${file.reason}.`;
  if (offer?.kind === 'unusable') return `The office’s catalogue is not used: ${offer.reason.replace(/\.$/, '')}.`;
  return offer?.kind === 'same' || offer?.kind === 'known' ? 'Up to date with the office’s catalogue.' : undefined;
}

interface Props {
  readonly file: OfficeFile | undefined;
  readonly office: OfficeView;
  readonly onLook: () => void;
}

/** What the office's catalogue is to this workbook: an offer, or a quiet line. */
export function OfficeLine({ file, office, onLook }: Props) {
  const styles = useStyles();
  const { offer, isDeclined, decline } = office;
  if (isDeclined && file?.status === 'there') {
    return (
      <Caption1 className={styles.line}>
        The office’s catalogue is not for this workbook.{' '}
        <Button size="small" onClick={() => decline(false)}>
          Compare it again
        </Button>
      </Caption1>
    );
  }
  const open = openOffer(offer);
  if (open) {
    return (
      <MessageBar intent="info" layout="multiline">
        <MessageBarBody>
          <OfficeOfferText offer={open} />
        </MessageBarBody>
        <MessageBarActions className={styles.buttons}>
          <Button size="small" onClick={onLook}>
            {open.kind === 'first' ? 'Look at it' : 'Look at the changes'}
          </Button>
          <Button size="small" onClick={() => decline(true)}>
            Not for this workbook
          </Button>
        </MessageBarActions>
      </MessageBar>
    );
  }
  const sentence = quietSentence(file, offer);
  return sentence === undefined ? null : <Caption1 className={styles.line}>{sentence}</Caption1>;
}
