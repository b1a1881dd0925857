import { Button, makeStyles, MessageBar, MessageBarActions, MessageBarBody, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import type { OfficeFile } from '../../workbook/officeFile';
import type { Workbook } from '../../workbook/workbook';
import type { HostServices } from '../controls/viewProps';
import { CatalogueWritingBar } from './CatalogueWritingBar';
import { OfficeOfferText, openOffer } from './OfficeOfferText';
import { useCatalogueWriting } from './useCatalogueWriting';
import { useOfficeFile } from './useOfficeFile';
import { useOfficeOffer } from './useOfficeOffer';
import { usePartsPlan } from './usePartsPlan';
import { useWorkbookCatalogue } from './useWorkbookCatalogue';

const useStyles = makeStyles({
  bar: { padding: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalM}`, overflowWrap: 'anywhere' },
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

function Offered({ workbook, services, file, onLook, onLater }: OfferedProps) {
  const styles = useStyles();
  const [shown, again] = useWorkbookCatalogue(workbook);
  const { offer, isDeclined, decline, taken } = useOfficeOffer(workbook, services.readPartsFile, file, shown);
  const reread = () => void again();
  const { writing, write, cancel, forget } = useCatalogueWriting(
    workbook,
    handle => {
      taken(handle);
      reread();
    },
    reread,
  );
  const open = isDeclined ? undefined : openOffer(offer);
  const standing = shown.status === 'ready' ? shown.found : undefined;
  const fresh = open?.isTaken ? undefined : open;
  const planned = usePartsPlan(workbook, standing, fresh?.isPlain ? fresh.result : undefined);
  if (writing.status !== 'idle') {
    return (
      <div className={styles.bar}>
        <CatalogueWritingBar workbook={workbook} writing={writing} onCancel={cancel} />
        {writing.status !== 'writing' && (
          <Button size="small" onClick={forget}>
            Close
          </Button>
        )}
      </div>
    );
  }
  if (!fresh) return null;
  const plan = planned.status === 'ready' && planned.plan.overwrites.length === 0 ? planned.plan : undefined;
  const isReady = fresh.isPlain && plan !== undefined;
  const copies = plan?.copies.map(({ sheet }) => sheet) ?? [];
  return (
    <div className={styles.bar}>
      <MessageBar intent="info" layout="multiline">
        <MessageBarBody>
          <OfficeOfferText offer={fresh} />
          {isReady && copies.length > 0 && ` Old values go to ${copies.join(', ')}.`}
          {isReady && ' Crimp data: check them against the makers’ current data before anyone crimps from them.'}
        </MessageBarBody>
        <MessageBarActions className={styles.buttons}>
          {isReady && (
            <Button size="small" appearance="primary" onClick={() => void write(standing, fresh.result, [])}>
              Take it
            </Button>
          )}
          <Button size="small" appearance={isReady ? 'secondary' : 'primary'} onClick={onLook}>
            {fresh.kind === 'first' ? 'Look at it' : 'Look at the changes'}
          </Button>
          <Button size="small" onClick={onLater}>
            Later
          </Button>
          <Button size="small" onClick={() => decline(true)}>
            Not for this workbook
          </Button>
        </MessageBarActions>
      </MessageBar>
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
