import { Divider, makeStyles, tokens } from '@fluentui/react-components';
import type { ViewProps } from '../controls/viewProps';
import { CareSection } from './CareSection';
import { CheckSection } from './CheckSection';

const useStyles = makeStyles({ view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalL } });

/** The machine itself: its periodic check, and its care by date. */
export function MachineView({ workbook }: ViewProps) {
  const styles = useStyles();
  return (
    <div className={styles.view}>
      <CheckSection workbook={workbook} />
      <Divider />
      <CareSection workbook={workbook} />
    </div>
  );
}
