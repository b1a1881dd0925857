import { makeStyles, tokens } from '@fluentui/react-components';

/** Small tables of numbers that fit a pane 320 points wide. */
export const useTableStyles = makeStyles({
  table: { tableLayout: 'auto', width: '100%' },
  wide: { overflowWrap: 'anywhere', paddingTop: tokens.spacingVerticalXS, paddingBottom: tokens.spacingVerticalXS },
  number: {
    textAlign: 'right',
    '& > *': { justifyContent: 'flex-end' },
    fontVariantNumeric: 'tabular-nums',
    whiteSpace: 'normal',
  },
});
