import { Accordion, AccordionHeader, AccordionItem, AccordionPanel } from '@fluentui/react-components';
import type { Workbook } from '../../../workbook/workbook';
import type { HostServices } from '../viewProps';
import { CopyForm } from './CopyForm';

interface Props {
  readonly workbook: Workbook;
  readonly services: HostServices;
}

/** "Copy without Benchrow", folded: what it needs of the workbook is read when it is unfolded. */
export function CopyPanel({ workbook, services }: Props) {
  return (
    <Accordion collapsible>
      <AccordionItem value="copy">
        <AccordionHeader as="h2">Copy without Benchrow</AccordionHeader>
        <AccordionPanel>
          <CopyForm workbook={workbook} services={services} />
        </AccordionPanel>
      </AccordionItem>
    </Accordion>
  );
}
