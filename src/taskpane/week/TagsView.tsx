import {
  Body1,
  Caption1,
  Field,
  Input,
  makeStyles,
  MessageBar,
  MessageBarBody,
  Select,
  tokens,
} from '@fluentui/react-components';
import { useState } from 'react';
import { wishesOf } from './CardsView';
import { JobsNote, type JobTicks } from '../controls/JobsNote';
import { FRESH_TAGS } from './tagFields';
import { useCards } from './useCards';
import { OutputButtons } from '../controls/OutputButtons';
import { freeSheetName } from '../../sheets/print/freeSheetName';
import { noPressure } from '../../sheets/jobs/missingDataNote';
import { freshSettings, monthsOfUse } from '../../sheets/cutlist/cutSettings';
import { usableUntil } from '../../sheets/cutlist/usableUntil';
import { today } from '../../sheets/table/today';
import { typedCount } from '../../sheets/table/typedFields';
import { useStored } from '../controls/useStored';
import type { ViewProps } from '../controls/viewProps';
import { labelSheets } from '../../sheets/tags/labelSheets';
import { tagProblems, tagsOf } from '../../sheets/tags/tag';
import { tagFontSize } from '../../sheets/tags/tagFontSize';
import { misfits, tagPage } from '../../sheets/tags/tagPage';
import { tagSheet } from '../../sheets/tags/tagSheet';

const useStyles = makeStyles({ view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM } });

/** Tags of the selected lines' assemblies: printed on label sheets, or written as a new sheet. */
export function TagsView({ workbook, services }: Pick<ViewProps, 'workbook' | 'services'>) {
  const styles = useStyles();
  const [fields, setFields] = useStored('tags', FRESH_TAGS);
  const [bench] = useStored('cuts', freshSettings('mm'));
  const [remarks, setRemarks] = useState<readonly string[]>([]);
  const labels = labelSheets.find(sheet => sheet.id === fields.labels) ?? labelSheets[0];
  const { value: used, mistake: usedMistake } = typedCount(
    fields.used,
    'number of labels',
    'enter a whole number, 0 for a new sheet',
  );
  const [ticks, setTicks] = useState<JobTicks>({});
  // Tags are printed again for lines that are done.
  const wishes = { ...wishesOf(fields, bench), ...ticks, whateverStatus: true };
  const { view, refresh, gather: read, show } = useCards(workbook, wishes);
  const gather = async () => {
    if (fields.maker.trim() === '') throw new Error('Enter your name as maker first: a tag without it is no marking.');
    if (used === undefined) throw new Error('Enter how many labels of the first sheet are already used: 0 for a new sheet.');
    const useBy = usableUntil(today(), monthsOfUse(bench));
    const options = { maker: fields.maker.trim(), prefix: fields.prefix, today: today(), useBy };
    const { cards } = await read();
    const tags = tagsOf(cards, options);
    setRemarks(tagProblems(cards, tags, options));
    if (!tags.some(tag => tag.pressure)) throw new Error(noPressure(workbook.host));
    return tags;
  };
  const page = async () => {
    const tags = await gather();
    const left = misfits(tags, labels);
    if (left) setRemarks(before => [...before, left]);
    if (!tags.some(tag => tag.pressure && tagFontSize(tag, labels))) throw new Error('No tag fits these labels.');
    return tagPage(tags, labels, used!.toNumber());
  };
  const write = async () => {
    const tags = await gather();
    const sheet = freeSheetName('Tags', await workbook.sheets(), today());
    await workbook.write(tagSheet(sheet, tags));
    return sheet;
  };
  return (
    <div className={styles.view}>
      <Body1>
        One tag a piece of the selected job lines, with a QR code of its number: scanned in Bench › Entry, it leads to its row.
      </Body1>
      <Field label="Maker" hint="Your own name, as it stands on the assembly" required>
        <Input value={fields.maker} onChange={(_, { value }) => setFields({ maker: value })} />
      </Field>
      <Field label="Number prefix" hint="Before the line, where the sheet has no column Assembly no.">
        <Input value={fields.prefix} onChange={(_, { value }) => setFields({ prefix: value })} />
      </Field>
      <Field label="Labels" hint="Print on plain paper first and lay it over your labels; print at 100 %">
        <Select value={labels.id} onChange={(_, { value }) => setFields({ labels: value })}>
          {labelSheets.map(sheet => (
            <option key={sheet.id} value={sheet.id}>
              {sheet.name}
            </option>
          ))}
        </Select>
      </Field>
      <Field
        label="Labels already used on the first sheet"
        validationState={usedMistake ? 'error' : 'none'}
        validationMessage={usedMistake}
      >
        <Input value={fields.used} inputMode="numeric" onChange={(_, { value }) => setFields({ used: value })} />
      </Field>
      <JobsNote workbook={workbook} view={view} ticks={ticks} onTicks={setTicks} onAnswered={refresh} onShow={show} />
      <OutputButtons
        workbook={workbook}
        services={services}
        page={page}
        instead="print the tags from your label program"
        onWrite={write}
        printLabel="Print tags"
        writeLabel="Write as a new sheet"
        writtenNote={
          workbook.host === 'try-out' ? 'The try-out sheet has no pictures: the QR codes are on the printed tags.' : undefined
        }
      />
      {remarks.length > 0 && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>{remarks.join(' ')}</MessageBarBody>
        </MessageBar>
      )}
      <Caption1>
        The rating is that of the weakest part. Year and month are today’s. Local law says what a tag must hold.
      </Caption1>
    </div>
  );
}
