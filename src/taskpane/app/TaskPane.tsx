import { FluentProvider, makeStyles, tokens } from '@fluentui/react-components';
import { useCallback, useState, type ReactNode } from 'react';
import { KeptViews } from '../controls/KeptViews';
import { TabRow } from '../controls/TabRow';
import { OfficeBar } from '../parts/OfficeBar';
import type { OfficeLook, ScannedTag, ViewProps } from '../controls/viewProps';
import { hostServices } from './hostServices';
import { goTo, shownAt, startOf } from './places';
import { Beginning } from './start/Beginning';
import { useStart } from './start/useStart';
import { Strip } from './strip/Strip';
import { tabs } from './tabs';
import { useTheme } from './useTheme';
import type { Wanted } from './wanted';

/** Where the pane is so low, or enlarged so much, all of it scrolls: two rows of tabs and the strip would leave nothing for the view. */
const LOW = '@media (max-height: 400px)';

const useStyles = makeStyles({
  pane: {
    height: '100%',
    display: 'flex',
    flexDirection: 'column',
    [LOW]: { height: 'auto', minHeight: '100%' },
    // At 200 % a pane is 160 points wide: long words break, choices and buttons go to the next line; tables keep their words and scroll.
    overflowWrap: 'anywhere',
    '& table': { overflowWrap: 'normal' },
    '& .fui-RadioGroup': { flexWrap: 'wrap' },
    '& .fui-MessageBarActions': { display: 'flex', flexWrap: 'wrap', rowGap: tokens.spacingVerticalXS },
    '& :is(.fui-Field, .fui-Input, .fui-Select)': { minWidth: 0, maxWidth: '100%' },
    '& :is(.fui-Input__input, .fui-Select__select)': { minWidth: 0, width: '100%' },
    // Two colours only: the line under it sets a button that looks like a link apart from text.
    '@media (forced-colors: active)': { '& .fui-Link': { textDecorationLine: 'underline' } },
  },
  tabs: { flexShrink: 0, padding: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalXS} 0` },
  // Where even that is not left beside tabs and strip, the pane scrolls: nothing lies over another.
  shown: { flex: '1 1 0', minHeight: '120px', display: 'flex', flexDirection: 'column', [LOW]: { flexBasis: 'auto' } },
  views: {
    flex: '1 1 0',
    minHeight: 0,
    overflowY: 'auto',
    padding: tokens.spacingHorizontalM,
    [LOW]: { flexBasis: 'auto', overflowY: 'visible' },
  },
});

/** Where a scanned tag leads. */
const ENTRY = 'bench/entry';
/** Where the office's catalogue is looked at. */
const LOAD = 'parts/load';

interface Props extends Pick<ViewProps, 'workbook' | 'functions'> {
  readonly wanted?: Wanted | undefined;
  /** Stands above all views. */
  readonly notice?: ReactNode;
}

/**
 * The task pane: five tabs with their views, and below them the strip about the selected cell. The same in Excel and in the try-out
 * sheet; it reaches the workbook through its port only.
 */
export function TaskPane({ workbook, functions, wanted, notice }: Props) {
  const styles = useStyles();
  const start = useStart(workbook);
  const [places, setPlaces] = useState(() => goTo(tabs, startOf(tabs), start.person?.place ?? ''));
  const [granted, setGranted] = useState<Wanted>();
  if (wanted !== granted) {
    setGranted(wanted);
    if (wanted) setPlaces(goTo(tabs, places, wanted.place));
  }
  const { close } = start;
  const open = useCallback(
    (place: string) => {
      close();
      setPlaces(before => goTo(tabs, before, place));
    },
    [close],
  );
  // Another file in the same pane: what a view has found, or is still working at, belongs to the one before.
  const [shown, setShown] = useState({ workbook, count: 0 });
  const [scanned, setScanned] = useState<ScannedTag>();
  const [officeLook, setOfficeLook] = useState<OfficeLook>();
  if (shown.workbook !== workbook) {
    setShown({ workbook, count: shown.count + 1 });
    setScanned(undefined);
    setOfficeLook(undefined);
  }
  const scan = useCallback(
    (text: string) => {
      setScanned({ text });
      open(ENTRY);
    },
    [open],
  );
  const lookAtOffice = () => {
    setOfficeLook({});
    open(LOAD);
  };
  const { tab, view } = shownAt(tabs, places);
  // In the try-out page the pane stands in a landmark of that page, and the sheet is what the page is about.
  const Frame = workbook.host === 'try-out' ? 'div' : 'main';
  return (
    <FluentProvider theme={useTheme()} style={{ height: '100%' }}>
      <Frame className={styles.pane} data-frame="pane">
        {notice}
        <div className={styles.tabs}>
          <TabRow label="Tabs" tabs={tabs} chosen={tab.id} prefix="tab-" controls="tab-shown" onChoose={open} />
        </div>
        <div className={styles.shown} role="tabpanel" id="tab-shown" aria-labelledby={`tab-${tab.id}`}>
          <div className={styles.tabs}>
            <TabRow
              key={tab.id}
              isSecond
              label={`Views of ${tab.title}`}
              tabs={tab.views}
              chosen={view.id}
              prefix={`tab-${tab.id}-`}
              controls={`view-${view.id}`}
              onChoose={id => open(`${tab.id}/${id}`)}
            />
          </div>
          <OfficeBar
            key={`office ${shown.count}`}
            workbook={workbook}
            services={hostServices}
            isHidden={`${tab.id}/${view.id}` === LOAD}
            onLook={lookAtOffice}
          />
          <div className={styles.views} data-frame="view">
            <Beginning start={start} sample={hostServices.sample} goTo={open}>
              <KeptViews
                key={shown.count}
                views={tabs.flatMap(({ views }) => views)}
                chosen={view.id}
                workbook={workbook}
                functions={functions}
                services={hostServices}
                goTo={open}
                scanned={scanned}
                officeLook={officeLook}
              />
            </Beginning>
          </div>
        </div>
        <Strip key={`strip ${shown.count}`} workbook={workbook} functions={functions} wanted={wanted} onScan={scan} />
      </Frame>
    </FluentProvider>
  );
}
