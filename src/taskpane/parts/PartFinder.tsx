import { Body1, Button, Caption1, Field, makeStyles, SearchBox, Select, tokens } from '@fluentui/react-components';
import { ChevronDownRegular, ChevronRightRegular } from '@fluentui/react-icons';
import { useDeferredValue, useMemo, useState } from 'react';
import type { Catalogue } from '../../core/catalogue/catalogue';
import type { Workbook } from '../../workbook/workbook';
import type { WorkbookCatalogue } from '../../sheets/catalogue/workbookCatalogue';
import { InsertBar } from './InsertBar';
import { PartCard } from './PartCard';
import { partSearch, type Part, type PartQuery } from '../../sheets/parts/partSearch';
import { useInsert } from './useInsert';
import { useSelectedCell } from './useSelectedCell';

const FIRST = 30;
const MORE = 100;
const NOTHING: PartQuery = { words: '', kind: '', size: '', endForm: '' };

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  filters: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(110px, 100%), 1fr))',
    gap: tokens.spacingHorizontalS,
  },
  search: { maxWidth: 'none' },
  none: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS, '& > :first-child': { flexBasis: '100%' } },
  list: { listStyleType: 'none', margin: 0, padding: 0 },
  part: {
    width: '100%',
    fontWeight: tokens.fontWeightRegular,
    justifyContent: 'start',
    textAlign: 'start',
    overflowWrap: 'anywhere',
  },
});

interface FilterProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [value: string, text: string])[];
  readonly onChange: (value: string) => void;
}

function Filter({ label, value, options, onChange }: FilterProps) {
  return (
    <Field label={label} size="small">
      <Select size="small" value={value} onChange={(_, data) => onChange(data.value)}>
        <option value="">any</option>
        {options.map(([each, text]) => (
          <option key={each} value={each}>
            {text}
          </option>
        ))}
      </Select>
    </Field>
  );
}

const same = (texts: readonly string[]) => texts.map(text => [text, text] as const);

const keyOf = ({ kind, name }: Part) => `${kind} ${name}`;

interface Props {
  readonly workbook: Workbook;
  readonly standing: WorkbookCatalogue;
  readonly catalogue: Catalogue;
  readonly goTo: (place: string) => void;
}

/** Finds parts as somebody types, shows their data, inserts them. */
export function PartFinder({ workbook, standing, catalogue, goTo }: Props) {
  const styles = useStyles();
  const search = useMemo(() => partSearch(catalogue), [catalogue]);
  const [query, setQuery] = useState(NOTHING);
  const [shown, setShown] = useState(FIRST);
  const [open, setOpen] = useState('');
  const late = useDeferredValue(query);
  const found = useMemo(() => search.find(late), [search, late]);
  const selected = useSelectedCell(workbook);
  const { state, insert, agree, leave } = useInsert(workbook, standing);
  const ask = (change: Partial<PartQuery>) => {
    setQuery(old => ({ ...old, ...change }));
    setShown(FIRST);
  };
  const rest = found.length - shown;
  return (
    <div className={styles.view}>
      <Field label="Search parts">
        <SearchBox
          className={styles.search}
          placeholder="Words, DN 12, bore, end form, angle"
          value={query.words}
          onChange={(_, { value }) => ask({ words: value })}
        />
      </Field>
      <div className={styles.filters}>
        <Filter
          label="Kind"
          value={query.kind}
          options={[
            ['hose', 'hoses'],
            ['fitting', 'fittings'],
          ]}
          onChange={kind => ask({ kind: kind as PartQuery['kind'] })}
        />
        <Filter label="Size" value={query.size} options={same(search.sizes)} onChange={size => ask({ size })} />
        <Filter label="End form" value={query.endForm} options={same(search.endForms)} onChange={endForm => ask({ endForm })} />
      </div>
      <Caption1 role="status">
        {found.length} of {search.parts.length} parts
      </Caption1>
      <InsertBar state={state} onAgree={() => void agree()} onLeave={leave} />
      {found.length === 0 && (
        <div className={styles.none}>
          <Body1>No part has all these words. Try fewer, or look at the rows left out under Checks.</Body1>
          <Button size="small" onClick={() => ask(NOTHING)}>
            Show all parts
          </Button>
          <Button size="small" onClick={() => goTo('parts/checks')}>
            Checks
          </Button>
        </div>
      )}
      <ul className={styles.list} aria-label="Parts found">
        {found.slice(0, shown).map(part => {
          const key = keyOf(part);
          return (
            <li key={key}>
              <Button
                className={styles.part}
                appearance="subtle"
                icon={open === key ? <ChevronDownRegular /> : <ChevronRightRegular />}
                aria-expanded={open === key}
                onClick={() => setOpen(open === key ? '' : key)}
              >
                {part.name}
              </Button>
              {open === key && (
                <PartCard
                  part={part}
                  units={catalogue.units}
                  selected={selected}
                  isBusy={state.status === 'busy'}
                  onInsert={wanted => void insert(part, wanted)}
                />
              )}
            </li>
          );
        })}
      </ul>
      {rest > 0 && (
        <Button onClick={() => setShown(shown + MORE)}>
          Show {Math.min(rest, MORE)} more of {rest}
        </Button>
      )}
      <Caption1>
        The makers’ current data come first. The weakest part sets an assembly’s working pressure, surges included.
      </Caption1>
    </div>
  );
}
