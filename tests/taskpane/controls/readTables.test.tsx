/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import type { ReactNode } from 'react';
import { tableAnswers } from '../../../src/sheets/table/tableAnswers';
import type { ReadReport, Takeable } from '../../../src/sheets/table/tableRows';
import { CorrectHeadings } from '../../../src/taskpane/controls/CorrectHeadings';
import { ReadNote } from '../../../src/taskpane/controls/ReadNote';
import { TableQuestions } from '../../../src/taskpane/controls/TableQuestions';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';

const book = () =>
  fakeWorkbook(
    {
      Jobs: [
        ['Hose', 'Cut length', 'Shade'],
        ['BIRCH-12', 900, 'red'],
      ],
    },
    { sheet: 'Jobs', address: 'A1' },
  );
const show = (view: ReactNode) => render(<FluentProvider theme={webLightTheme}>{view}</FluentProvider>);

const report: ReadReport = {
  sheet: 'Jobs',
  tables: ['A1:C9'],
  taken: [2, 3],
  leftOut: [
    { row: 7, reason: 'stop', sentence: 'quantity is blank: fill it in' },
    { row: 8, reason: 'hidden' },
  ],
};

test('a reading names what was left out, leads to each row, and takes it with a tick', async () => {
  const { workbook } = book();
  const taken: ReadonlySet<Takeable>[] = [];
  show(<ReadNote workbook={workbook} report={report} take={new Set(['done'])} onTake={take => taken.push(take)} />);
  screen.getByText(/2 rows taken; left out: 1 STOP, 1 hidden/);
  screen.getByText(/quantity is blank/);
  await userEvent.click(screen.getByRole('button', { name: 'Row 7' }));
  expect((await workbook.selection()).address).toBe('A7');
  await userEvent.click(screen.getByRole('checkbox', { name: 'Take hidden rows, too' }));
  await userEvent.click(screen.getByRole('checkbox', { name: 'Take rows that are done, too' }));
  expect(taken.map(take => [...take])).toEqual([['done', 'hidden'], []]);
});

test('a question is answered with a button, once for all tables with that heading', async () => {
  const { workbook } = book();
  const onAnswered = jest.fn();
  const question = {
    asked: 'unit',
    heading: 'Cut length',
    column: 'B: Cut length',
    sentence: 'Column B: Cut length has no unit. Which is it?',
    choices: [
      { value: 'mm', label: 'mm' },
      { value: 'in', label: 'in' },
    ],
    proposal: 'mm',
  } as const;
  show(<TableQuestions workbook={workbook} kind="jobs" sheet="Jobs" questions={[question, question]} onAnswered={onAnswered} />);
  await userEvent.click(screen.getByRole('button', { name: 'in' }));
  expect(onAnswered).toHaveBeenCalledTimes(1);
  expect([...(await tableAnswers(workbook, 'jobs', 'Jobs')).unit]).toEqual([['cut length', 'in']]);
});

test('what a heading means is corrected by hand, remembered, and forgotten again', async () => {
  const { workbook } = book();
  const onCorrected = jest.fn();
  show(
    <CorrectHeadings
      workbook={workbook}
      kind="jobs"
      sheet="Jobs"
      columns={[
        { column: 0, heading: 'Hose', role: 'hose' },
        { column: 2, heading: 'Shade', role: undefined },
      ]}
      roles={[
        { role: 'hose', label: 'Hose' },
        { role: 'label', label: 'Wanted for' },
      ]}
      onCorrected={onCorrected}
    />,
  );
  await userEvent.click(screen.getByText('Columns read'));
  await userEvent.selectOptions(screen.getByRole('combobox', { name: 'C: Shade' }), 'label');
  expect([...(await tableAnswers(workbook, 'jobs', 'Jobs')).role]).toEqual([['shade', 'label']]);
  await userEvent.click(screen.getByRole('button', { name: 'Forget the corrections' }));
  expect([...(await tableAnswers(workbook, 'jobs', 'Jobs')).role]).toEqual([]);
  expect(onCorrected).toHaveBeenCalledTimes(2);
});
