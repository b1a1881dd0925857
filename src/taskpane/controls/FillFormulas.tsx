import { Button, MessageBar, MessageBarActions, MessageBarBody, MessageBarTitle } from '@fluentui/react-components';
import type { MissingFormulas } from '../../sheets/columns/missingFormulas';

interface Props {
  readonly missing: MissingFormulas;
  readonly busy: boolean;
  readonly onFill: () => void;
}

/** Offers to fill the columns of ours in rows that were appended since; nothing where none is missing. */
export function FillFormulas({ missing: { rows, headings }, busy, onFill }: Props) {
  if (rows.length === 0) return null;
  const title = rows.length === 1 ? '1 row has no formulas' : `${rows.length} rows have no formulas`;
  return (
    <MessageBar intent="warning" layout="multiline">
      <MessageBarBody>
        <MessageBarTitle>{title}</MessageBarTitle>
        {headings.join(', ')}: {rows.length === 1 ? 'row' : 'rows'} {rows.slice(0, 12).join(', ')}
        {rows.length > 12 && ' …'}
      </MessageBarBody>
      <MessageBarActions>
        <Button size="small" disabledFocusable={busy} onClick={onFill}>
          Fill them
        </Button>
      </MessageBarActions>
    </MessageBar>
  );
}
