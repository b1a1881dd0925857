import { Body1, Button, Caption1, Field, Input, makeStyles, Select, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import { today } from '../../sheets/table/today';
import { freeSheetName } from '../../sheets/print/freeSheetName';
import { NoPartsData } from '../controls/NoPartsData';
import type { ViewProps } from '../controls/viewProps';
import { WriteButton } from '../controls/WriteButton';
import { catalogueFindings } from '../../sheets/parts/catalogueFindings';
import { checksSheet } from '../../sheets/parts/checksSheet';
import { findingGroups } from '../../sheets/parts/findingGroups';
import { FindingList } from './FindingList';
import { dateColumns, oldPrices, type DateColumn } from '../../sheets/parts/oldPrices';
import { useRun } from '../controls/useRun';
import { usableCatalogue, type UsableCatalogue } from '../../sheets/catalogue/usableCatalogue';
import { WrittenBar } from '../controls/WrittenBar';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM },
  narrow: { minWidth: 0, width: '100%' },
});

const nameOf = ({ table, heading }: DateColumn) => `${table[0]!.toUpperCase()}${table.slice(1)}: ${heading}`;

interface DateProps {
  readonly columns: readonly DateColumn[];
  readonly chosen: string;
  readonly before: string;
  readonly onChosen: (name: string) => void;
  readonly onBefore: (day: string) => void;
}

/** Which column of the user's own says how old a price is, and from when on it is too old. */
function DateFields({ columns, chosen, before, onChosen, onBefore }: DateProps) {
  const styles = useStyles();
  if (columns.length === 0) {
    return (
      <Caption1 block>
        The age of the prices is not known: no table has a column of dates. Add one beside the prices (like Price date) to check
        it here.
      </Caption1>
    );
  }
  return (
    <>
      <Field label="Dates of the prices">
        <Select className={styles.narrow} value={chosen} onChange={(_, { value }) => onChosen(value)}>
          <option value="">not checked</option>
          {columns.length > 1 && <option value="all">all of these</option>}
          {columns.map(column => (
            <option key={nameOf(column)}>{nameOf(column)}</option>
          ))}
        </Select>
      </Field>
      {chosen !== '' && (
        <Field label="Old if before">
          <Input className={styles.narrow} type="date" value={before} onChange={(_, { value }) => onBefore(value)} />
        </Field>
      )}
    </>
  );
}

/** Says what the catalogue lacks before somebody relies on its prices. */
export function ChecksView({ workbook, goTo }: Pick<ViewProps, 'workbook' | 'goTo'>) {
  const styles = useStyles();
  const [outcome, check] = useRun<UsableCatalogue>();
  const [written, write] = useRun<string>();
  const [chosen, setChosen] = useState('');
  const [before, setBefore] = useState('');
  const found = outcome.status === 'done' ? outcome.result : undefined;
  const columns = found ? dateColumns(found) : [];
  const picked = columns.filter(column => chosen === 'all' || nameOf(column) === chosen);
  const findings = found ? [...catalogueFindings(found), ...oldPrices(found, picked, before)] : [];
  const count = findingGroups(findings).length;
  const catalogue = found?.catalogue;
  const counts = catalogue && `${catalogue.hoses.length} hoses, ${catalogue.fittings.length} fittings`;
  const add = () =>
    write(async () => {
      const sheet = freeSheetName('Catalogue checks', await workbook.sheets(), today());
      await workbook.write(checksSheet(sheet, findings, catalogue!.handle, today()));
      return sheet;
    });
  return (
    <div className={styles.view}>
      <Body1>
        Looks through the parts data of this workbook: prices, cut-offs, ratings, crimp data, rows left out, values that look
        wrong.
      </Body1>
      <Button
        appearance={found ? 'secondary' : 'primary'}
        disabled={outcome.status === 'busy'}
        onClick={() => void check(() => usableCatalogue(workbook))}
      >
        {found ? 'Check again' : 'Check the catalogue'}
      </Button>
      <NoPartsData workbook={workbook} goTo={goTo} />
      {outcome.status === 'failed' && <WrittenBar workbook={workbook} outcome={outcome} failure="" />}
      {found && (
        <>
          <Caption1 block>{catalogue!.handle}</Caption1>
          <DateFields columns={columns} chosen={chosen} before={before} onChosen={setChosen} onBefore={setBefore} />
          <Body1 role="status">
            {findings.length === 0
              ? `Nothing to correct in ${counts}.`
              : `${count} ${count === 1 ? 'finding' : 'findings'} in ${counts}.`}
          </Body1>
          {findings.length > 0 && (
            <WriteButton appearance="primary" disabled={written.status === 'busy'} onClick={() => void add()}>
              Write the findings as a new sheet
            </WriteButton>
          )}
          <WrittenBar workbook={workbook} outcome={written} sheets={written.status === 'done' ? [written.result] : undefined} />
          <FindingList findings={findings} onShow={at => void workbook.select(at)} />
        </>
      )}
    </div>
  );
}
