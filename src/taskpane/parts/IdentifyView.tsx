import { Button, Caption1, Field, makeStyles, Select, tokens } from '@fluentui/react-components';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { useStored } from '../controls/useStored';
import type { ViewProps } from '../controls/viewProps';
import { HoseIdentifier } from './HoseIdentifier';
import { ThreadIdentifier } from './ThreadIdentifier';
import { useWorkbookCatalogue } from './useWorkbookCatalogue';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM, '& h2, & h3': { margin: 0 } },
  start: { alignSelf: 'flex-start' },
});

/** What a thread or a hose in the hand is, by caliper. */
export function IdentifyView({ workbook, goTo }: ViewProps) {
  const styles = useStyles();
  const [standing] = useWorkbookCatalogue(workbook);
  const [{ unit }, setUnit] = useStored<{ unit: LengthUnit }>('identifyUnit', { unit: 'mm' });
  const catalogue = standing.status === 'ready' ? standing.found.catalogue : undefined;
  return (
    <div className={styles.view}>
      <Field label="Unit">
        <Select value={unit} onChange={(_, { value }) => setUnit({ unit: value as LengthUnit })}>
          <option value="mm">mm</option>
          <option value="in">inches</option>
        </Select>
      </Field>
      <ThreadIdentifier unit={unit} catalogue={catalogue} />
      {catalogue && <HoseIdentifier unit={unit} catalogue={catalogue} />}
      {!catalogue && standing.status !== 'loading' && (
        <>
          <Caption1>Without parts data, threads are found by the standards only, and no hoses.</Caption1>
          <Button className={styles.start} onClick={() => goTo('parts/load')}>
            Load parts data
          </Button>
        </>
      )}
      <Caption1>
        A thread or a size that fits does not make a part right: read what is marked on it, and do not mix makes unless the makers
        approve it in writing. The makers’ current data come first.
      </Caption1>
    </div>
  );
}
