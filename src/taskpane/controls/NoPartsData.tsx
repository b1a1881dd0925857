import {
  Button,
  makeStyles,
  MessageBar,
  MessageBarActions,
  MessageBarBody,
  MessageBarTitle,
  tokens,
} from '@fluentui/react-components';
import type { Workbook } from '../../workbook/workbook';
import { useCatalogue } from './useCatalogue';
import type { ViewProps } from './viewProps';

const useStyles = makeStyles({ buttons: { flexWrap: 'wrap', gap: tokens.spacingHorizontalS } });

/** Says that the workbook has no parts data, and leads to where they come from. */
export function NoPartsBar({ goTo }: Pick<ViewProps, 'goTo'>) {
  const styles = useStyles();
  return (
    <MessageBar intent="warning" layout="multiline">
      <MessageBarBody>
        <MessageBarTitle>No parts data</MessageBarTitle>
        No cell of this workbook holds =HOSE.CATALOGUE(…). Load hoses, fittings and crimps from your own files or ranges: that
        makes the cell.
      </MessageBarBody>
      <MessageBarActions className={styles.buttons}>
        <Button onClick={() => goTo('parts/load')}>Load parts data</Button>
      </MessageBarActions>
    </MessageBar>
  );
}

/** The same for views that cannot do without; nothing where there are parts data. */
export function NoPartsData({ workbook, goTo }: Pick<ViewProps, 'goTo'> & { readonly workbook: Workbook }) {
  const [view] = useCatalogue(workbook);
  return view.status === 'none' ? <NoPartsBar goTo={goTo} /> : null;
}
