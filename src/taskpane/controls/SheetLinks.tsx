import { Link } from '@fluentui/react-components';
import type { Workbook } from '../../workbook/workbook';

/** Links to the beginning of sheets, with commas between them. */
export function SheetLinks({ workbook, sheets }: { readonly workbook: Workbook; readonly sheets: readonly string[] }) {
  return (
    <>
      {sheets.map((sheet, index) => (
        <span key={sheet}>
          {index > 0 && ', '}
          <Link inline onClick={() => void workbook.select({ sheet, address: 'A1' })}>
            {sheet}
          </Link>
        </span>
      ))}
    </>
  );
}
