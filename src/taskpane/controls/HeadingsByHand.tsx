import { Body1, Button, Field, makeStyles, Select, tokens } from '@fluentui/react-components';
import { useCallback, useState, type ReactNode } from 'react';
import { headingProposals, type HeadingKind, type HeadingProposal } from '../../sheets/table/headingProposals';
import { addressOf } from '../../workbook/a1';
import type { Workbook } from '../../workbook/workbook';
import { CorrectHeadings } from './CorrectHeadings';
import { useSettledView } from './useSettledView';

const useStyles = makeStyles({
  part: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS, minWidth: 0 },
  start: { alignSelf: 'flex-start' },
  narrow: { minWidth: 0 },
});

interface Props {
  readonly workbook: Workbook;
  readonly of: HeadingKind;
  /** The sheet whose headings are not known; the selected one where left out. */
  readonly sheet?: string | undefined;
  /** What a heading means is remembered: read the sheet again. */
  readonly onCorrected: () => void;
  /** What is shown where no row looks like headings. */
  readonly otherwise?: ReactNode;
  /** What else has to be said of such a sheet. */
  readonly children?: ReactNode;
}

interface ProposalsRead {
  readonly status: 'ready';
  readonly sheet: string;
  readonly proposals: readonly HeadingProposal[];
}

const rowOf = ({ table }: HeadingProposal) => table.block.row + 1;
const rowText = (proposal: HeadingProposal) =>
  `Row ${rowOf(proposal)}: ${proposal.columns.map(({ heading }) => heading).join(', ')}`;

/** Of a sheet in which no table was recognised: which row holds the headings, and what each of them means. */
export function HeadingsByHand({ workbook, of, sheet: named, onCorrected, otherwise = null, children }: Props) {
  const styles = useStyles();
  const [chosen, setChosen] = useState<number>();
  const read = useCallback(
    async (from: Workbook): Promise<ProposalsRead> => {
      const sheet = named ?? (await from.selection()).sheet;
      return { status: 'ready', sheet, proposals: await headingProposals(from, sheet, of) };
    },
    [named, of],
  );
  const { view, refresh } = useSettledView<ProposalsRead>(workbook, read);
  if (view.status !== 'ready') return view.status === 'loading' ? null : otherwise;
  const { sheet, proposals } = view;
  const proposal = proposals.find(each => rowOf(each) === chosen) ?? proposals[0];
  if (!proposal) return otherwise;
  const { table, columns, missing, isKnown } = proposal;
  const heading = addressOf({ ...table.block, rows: 1 });
  return (
    <section className={styles.part} aria-label={`Headings of ${sheet}`}>
      {children}
      <Body1>
        Are your headings in other words? Choose what each column is.
        {missing.length > 0 && ` Still needed: ${missing.map(group => group.join(' or ')).join('; ')}.`}
      </Body1>
      {proposals.length > 1 && (
        <Field label="Heading row">
          <Select className={styles.narrow} value={String(rowOf(proposal))} onChange={(_, { value }) => setChosen(Number(value))}>
            {proposals.map(each => (
              <option key={addressOf(each.table.block)} value={rowOf(each)}>
                {rowText(each)}
              </option>
            ))}
          </Select>
        </Field>
      )}
      <Button className={styles.start} size="small" onClick={() => void workbook.select({ sheet, address: heading })}>
        Show {heading} of {sheet}
      </Button>
      <CorrectHeadings
        key={heading}
        isOpen={!isKnown}
        workbook={workbook}
        kind={of.kind}
        sheet={sheet}
        columns={columns}
        roles={of.roles}
        onCorrected={() => {
          refresh();
          onCorrected();
        }}
      />
    </section>
  );
}
