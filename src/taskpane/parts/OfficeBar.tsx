import { Button, makeStyles, MessageBar, MessageBarActions, MessageBarBody, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import type { ComparedOffer } from '../../sheets/parts/officeOffer';
import type { PartsPlan } from '../../sheets/parts/planParts';
import type { OfficeFile } from '../../workbook/officeFile';
import type { Workbook } from '../../workbook/workbook';
import { useFocusWhenLost } from '../controls/useFocusWhenLost';
import type { HostServices } from '../controls/viewProps';
import { CatalogueWritingBar } from './CatalogueWritingBar';
import { OfficeOfferText, openOffer } from './OfficeOfferText';
import { useCatalogueWriting } from './useCatalogueWriting';
import { useOfficeFile } from './useOfficeFile';
import { useOfficeOffer } from './useOfficeOffer';
import { usePartsPlan } from './usePartsPlan';
import { useWorkbookCatalogue } from './useWorkbookCatalogue';

const useStyles = makeStyles({
  bar: {
    padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM} 0`,
    overflowWrap: 'anywhere',
    ':focus': { outline: 'none' },
  },
  buttons: { flexWrap: 'wrap' },
});

type File = Extract<OfficeFile, { status: 'there' }>;

interface OfferedProps {
  readonly workbook: Workbook;
  readonly services: HostServices;
  readonly file: File;
  readonly onLook: () => void;
  readonly onLater: () => void;
}

interface OfferBarProps {
  readonly offer: ComparedOffer;
  /** Where it goes, once that is known to be in nobody's way. */
  readonly plan: PartsPlan | undefined;
  readonly onTake: () => void;
  readonly onLook: () => void;
  readonly onLater: () => void;
  readonly onDecline: () => void;
}

function OfferBar({ offer, plan, onTake, onLook, onLater, onDecline }: OfferBarProps) {
  const styles = useStyles();
  const isReady = offer.isPlain && plan !== undefined;
  const copies = plan?.copies.map(({ sheet }) => sheet) ?? [];
  return (
    <MessageBar intent="info" layout="multiline">
      <MessageBarBody>
        <OfficeOfferText offer={offer} />
        {isReady && copies.length > 0 && ` Old values go to ${copies.join(', ')}.`}
        {isReady && ' Crimp data: check them against the makers’ current data before anyone crimps from them.'}
      </MessageBarBody>
      <MessageBarActions className={styles.buttons}>
        {isReady && (
          <Button size="small" appearance="primary" onClick={onTake}>
            Take it
          </Button>
        )}
        <Button size="small" appearance={isReady ? 'secondary' : 'primary'} onClick={onLook}>
          {offer.kind === 'first' ? 'Look at it' : 'Look at the changes'}
        </Button>
        <Button size="small" onClick={onLater}>
          Later
        </Button>
        <Button size="small" onClick={onDecline}>
          Not for this workbook
        </Button>
      </MessageBarActions>
    </MessageBar>
  );
}

function Offered({ workbook, services, file, onLook, onLater }: OfferedProps) {
  const styles = useStyles();
  const [shown, again] = useWorkbookCatalogue(workbook);
  const { offer, isDeclined, decline, taken } = useOfficeOffer(workbook, services.readPartsFile, file, shown);
  const reread = () => void again();
  const onWritten = (handle: string) => {
    taken(handle);
    reread();
  };
  const { writing, write, cancel, forget } = useCatalogueWriting(workbook, onWritten, reread);
  const open = isDeclined ? undefined : openOffer(offer);
  const fresh = open?.isTaken ? undefined : open;
  const standing = shown.status === 'ready' ? shown.found : undefined;
  const planned = usePartsPlan(workbook, standing, fresh?.isPlain ? fresh.result : undefined);
  const plan = planned.status === 'ready' && planned.plan.overwrites.length === 0 ? planned.plan : undefined;
  // The button that was pressed goes away.
  const view = useFocusWhenLost<HTMLDivElement>(writing.status);
  const isIdle = writing.status === 'idle';
  if (isIdle && !fresh) return null;
  return (
    <div className={styles.bar} ref={view} tabIndex={-1} role="group" aria-label="Catalogue of the office">
      <CatalogueWritingBar workbook={workbook} writing={writing} onCancel={cancel} />
      {isIdle && fresh && (
        <OfferBar
          offer={fresh}
          plan={plan}
          onTake={() => void write(standing, fresh.result, [])}
          onLook={onLook}
          onLater={onLater}
          onDecline={() => decline(true)}
        />
      )}
      {(writing.status === 'done' || writing.status === 'failed') && (
        <Button size="small" onClick={forget}>
          Close
        </Button>
      )}
    </div>
  );
}

interface Props {
  readonly workbook: Workbook;
  readonly services: HostServices;
  /** Load is open, which says the same with more words. */
  readonly isHidden: boolean;
  readonly onLook: () => void;
}

/** Offers the office's catalogue above whatever view is open, until somebody answers; nothing where there is none, or nothing new in it. */
export function OfficeBar({ workbook, services, isHidden, onLook }: Props) {
  const file = useOfficeFile(services.officeFile);
  const [later, setLater] = useState('');
  if (isHidden || file?.status !== 'there' || file.tag === later) return null;
  const onLater = () => setLater(file.tag);
  return <Offered key={file.tag} workbook={workbook} services={services} file={file} onLook={onLook} onLater={onLater} />;
}
