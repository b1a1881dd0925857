import { makeStyles, tokens } from '@fluentui/react-components';
import { useCallback, useState } from 'react';
import type { OfficeLook, ViewProps } from '../controls/viewProps';
import { LoadForm, type LookedAt } from './LoadForm';
import { CatalogueCard } from './CatalogueCard';
import { OfficeLine } from './OfficeLine';
import { openOffer } from './OfficeOfferText';
import { useOfficeFile } from './useOfficeFile';
import { useOfficeOffer } from './useOfficeOffer';
import { useWorkbookCatalogue } from './useWorkbookCatalogue';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM, '& h2, & h3': { margin: 0 } },
});

/** The workbook's catalogue as it is now, the office's, and below them the way to load another. */
export function LoadView({ workbook, services, officeLook }: ViewProps) {
  const styles = useStyles();
  const [standing, again] = useWorkbookCatalogue(workbook);
  const reread = useCallback(() => void again(), [again]);
  const file = useOfficeFile(services.officeFile);
  const office = useOfficeOffer(workbook, services.readPartsFile, file, standing);
  const spared = openOffer(office.offer)?.spared;
  const [looked, setLooked] = useState<LookedAt>();
  const [granted, setGranted] = useState<OfficeLook>();
  const look = () => {
    if (file?.status !== 'there' || !spared) return;
    const { name, bytes } = file;
    setLooked({ file: { name, bytes: async () => bytes }, spared });
  };
  // A wish that comes from elsewhere waits until the two catalogues are compared.
  if (officeLook !== granted && spared) {
    setGranted(officeLook);
    if (officeLook) look();
  }
  return (
    <div className={styles.view}>
      <CatalogueCard workbook={workbook} standing={standing} onAgain={reread} />
      <OfficeLine file={file} office={office} onLook={look} />
      {standing.status !== 'loading' && (
        <LoadForm
          workbook={workbook}
          readPartsFile={services.readPartsFile}
          standing={standing.status === 'ready' ? standing.found : undefined}
          onAgain={reread}
          looked={looked}
          onTaken={office.taken}
        />
      )}
    </div>
  );
}
