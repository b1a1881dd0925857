import { makeStyles, Tab, TabList } from '@fluentui/react-components';

const useStyles = makeStyles({ tabs: { flexWrap: 'wrap' } });

interface Props<Id extends string> {
  /** What the row of tabs is called. */
  readonly label: string;
  readonly tabs: readonly { readonly id: Id; readonly title: string }[];
  readonly chosen: Id;
  onChoose(id: Id): void;
}

/** The row of tabs of a panel of several views. */
export function TabRow<Id extends string>({ label, tabs, chosen, onChoose }: Props<Id>) {
  const styles = useStyles();
  return (
    <TabList
      className={styles.tabs}
      size="small"
      appearance="subtle"
      selectedValue={chosen}
      onTabSelect={(_, { value }) => onChoose(value as Id)}
      aria-label={label}
    >
      {tabs.map(({ id, title }) => (
        <Tab key={id} value={id}>
          {title}
        </Tab>
      ))}
    </TabList>
  );
}
