import { Body1, FluentProvider, Link, MessageBar, MessageBarBody, MessageBarTitle } from '@fluentui/react-components';
import { useTheme } from './useTheme';

/** Why the pane has no workbook. */
export type Absence = 'noOfficeJs' | 'notExcel';

const TOLD: Readonly<Record<Absence, { title: string; text: string }>> = {
  noOfficeJs: {
    title: 'Office.js did not load',
    text: 'This pane needs Microsoft’s script office.js and could not load it. Check the connection to appsforoffice.microsoft.com, or build with OFFICE_JS=local for an intranet, then reload the pane.',
  },
  notExcel: {
    title: 'This page is not open in Excel',
    text: 'It is the task pane of an Excel add-in. Open it in Excel with the Benchrow button on the Home tab. Without Excel, use the try-out sheet.',
  },
};

/** Says plainly why there is no workbook here, and what to do. */
export function OutsideExcel({ absence }: { readonly absence: Absence }) {
  const { title, text } = TOLD[absence];
  return (
    <FluentProvider theme={useTheme()} style={{ minHeight: '100vh' }}>
      <main style={{ padding: 12 }} aria-label="Benchrow">
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>{title}</MessageBarTitle>
            {text}
          </MessageBarBody>
        </MessageBar>
        <Body1 block style={{ marginTop: 12 }}>
          <Link href="preview.html">Open the try-out sheet</Link> · <Link href="help.html">The worksheet functions</Link>
        </Body1>
      </main>
    </FluentProvider>
  );
}
