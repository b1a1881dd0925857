import { makeStyles, mergeClasses, Tab, TabList, tokens } from '@fluentui/react-components';

const useStyles = makeStyles({
  tabs: { flexWrap: 'wrap' },
  // Five views fit one row of a pane that is 320 points wide.
  close: { columnGap: tokens.spacingHorizontalXXS, rowGap: tokens.spacingVerticalXXS },
  narrow: { paddingLeft: tokens.spacingHorizontalXS, paddingRight: tokens.spacingHorizontalXS },
});

interface Props {
  /** What the row of tabs is called. */
  readonly label: string;
  readonly tabs: readonly { readonly id: string; readonly title: string }[];
  readonly chosen: string;
  /** What stands before a tab's own id in the page: `tab-`. */
  readonly prefix: string;
  /** Id of the element that shows what is chosen. */
  readonly controls: string;
  /** A row below another one looks lighter. */
  readonly isSecond?: boolean;
  onChoose(id: string): void;
}

/** One row of tabs. */
export function TabRow({ label, tabs, chosen, prefix, controls, isSecond = false, onChoose }: Props) {
  const styles = useStyles();
  return (
    <TabList
      className={mergeClasses(styles.tabs, isSecond && styles.close)}
      size="small"
      appearance={isSecond ? 'subtle-circular' : 'transparent'}
      selectedValue={chosen}
      onTabSelect={(_, { value }) => onChoose(String(value))}
      aria-label={label}
    >
      {tabs.map(({ id, title }) => (
        <Tab
          key={id}
          className={isSecond ? styles.narrow : undefined}
          id={`${prefix}${id}`}
          value={id}
          aria-controls={id === chosen ? controls : undefined}
        >
          {title}
        </Tab>
      ))}
    </TabList>
  );
}
