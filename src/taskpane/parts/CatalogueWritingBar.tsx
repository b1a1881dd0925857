import { Button, Field, Link, MessageBar, MessageBarBody, MessageBarTitle, ProgressBar } from '@fluentui/react-components';
import type { Workbook } from '../../workbook/workbook';
import type { CatalogueWriting } from './useCatalogueWriting';

interface Props {
  readonly workbook: Workbook;
  readonly writing: CatalogueWriting;
  readonly onCancel: () => void;
}

/** How far the writing is, what was written, or why it was not and what stands in the workbook. */
export function CatalogueWritingBar({ workbook, writing, onCancel }: Props) {
  return (
    <div role="status">
      {writing.status === 'writing' && (
        <>
          <Field validationMessage="Writing the catalogue" validationState="none">
            <ProgressBar {...(writing.share !== undefined && { value: writing.share })} aria-label="Writing the catalogue" />
          </Field>
          <Button size="small" onClick={onCancel}>
            Stop and take back
          </Button>
        </>
      )}
      {writing.status === 'done' && (
        <MessageBar intent="success" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>Written</MessageBarTitle>
            {writing.handle}, in{' '}
            <Link inline onClick={() => void workbook.select(writing.plan.cell)}>
              {writing.plan.cell.sheet}!{writing.plan.cell.address}
            </Link>
            .{writing.plan.copies.length > 0 && ` Old values: ${writing.plan.copies.map(({ sheet }) => sheet).join(', ')}.`}
          </MessageBarBody>
        </MessageBar>
      )}
      {writing.status === 'failed' && (
        <MessageBar intent="error" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>Not written</MessageBarTitle>
            {writing.reason}
          </MessageBarBody>
        </MessageBar>
      )}
    </div>
  );
}
