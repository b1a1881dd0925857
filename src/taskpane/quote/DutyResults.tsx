import {
  Accordion,
  AccordionHeader,
  AccordionItem,
  AccordionPanel,
  Button,
  Caption1,
  makeStyles,
  MessageBar,
  MessageBarBody,
  tokens,
} from '@fluentui/react-components';
import { useState } from 'react';
import type { Catalogue } from '../../core/catalogue/catalogue';
import type { Told } from '../controls/ToldBar';
import type { Candidates, Choice } from '../../sheets/duty/candidates';
import { ChoiceView } from './ChoiceView';
import type { Demand } from '../../sheets/duty/readDuty';
import { RuledOutList } from './RuledOutList';

const FIRST_SHOWN = 5;

const useStyles = makeStyles({
  header: { display: 'flex', flexWrap: 'wrap', columnGap: tokens.spacingHorizontalM },
  caution: {
    display: 'flex',
    flexDirection: 'column',
    gap: tokens.spacingVerticalXS,
    borderLeft: `3px solid ${tokens.colorPaletteDarkOrangeBorderActive}`,
    paddingLeft: tokens.spacingHorizontalM,
  },
  list: { margin: 0, paddingLeft: '1.2em' },
});

interface Props {
  readonly catalogue: Catalogue;
  readonly demand: Demand;
  readonly found: Candidates;
  readonly isStale: boolean;
  readonly onInsert: (choice: Choice) => void;
  /** What inserting a hose did, and which hose it was. */
  readonly message: { readonly hose: string; readonly what: Told } | undefined;
}

/** What to mind before anything is made by this answer. */
function cautions({ surge, fluid }: Demand): readonly string[] {
  return [
    surge === undefined
      ? 'No surge given: the hoses are judged by working pressure alone. The weakest part sets the rating, surges included.'
      : 'The weakest part sets the rating, surges included.',
    `Check with the makers that hose, seals and couplings take ${fluid ?? 'the fluid'} at these temperatures.`,
    'The catalogue has one temperature range for fluid and air: it must cover both. It has no derating for fittings.',
    'The makers’ current data come first. Hose and couplings of different makers are mixed only with their written approval. Local law, codes and a qualified person decide.',
    'Pressure drop: straight smooth hose only. Couplings and bends add to it. Oil of a grade is assumed to have viscosity index 100.',
  ];
}

/** Hoses that suit, cheapest first, and those ruled out with their reasons. */
export function DutyResults({ catalogue, demand, found, isStale, onInsert, message }: Props) {
  const styles = useStyles();
  const { suitable, ruledOut } = found;
  const [isAll, setIsAll] = useState(false);
  const shown = isAll ? suitable : suitable.slice(0, FIRST_SHOWN);
  return (
    <>
      {isStale && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>The form has changed. Find the hoses again.</MessageBarBody>
        </MessageBar>
      )}
      <Accordion collapsible defaultOpenItems={suitable[0]?.hose.hose}>
        {shown.map(candidate => (
          <AccordionItem key={candidate.hose.hose} value={candidate.hose.hose}>
            <AccordionHeader as="h2">
              <span className={styles.header}>
                <span>{candidate.hose.hose}</span>{' '}
                <span>{candidate.cheapest.cost ? `${candidate.cheapest.cost.total.toFixed(2)} each` : 'cost not known'}</span>
              </span>
            </AccordionHeader>
            <AccordionPanel>
              <ChoiceView
                catalogue={catalogue}
                demand={demand}
                candidate={candidate}
                canInsert={!isStale}
                onInsert={onInsert}
                message={message?.hose === candidate.hose.hose ? message.what : undefined}
              />
            </AccordionPanel>
          </AccordionItem>
        ))}
      </Accordion>
      {shown.length < suitable.length && (
        <Button onClick={() => setIsAll(true)}>Show {suitable.length - shown.length} more</Button>
      )}
      {ruledOut.length > 0 && (
        <RuledOutList catalogue={catalogue} demand={demand} ruledOut={ruledOut} isOpen={suitable.length === 0} />
      )}
      <div className={styles.caution} role="note">
        <ul className={styles.list}>
          {cautions(demand).map(caution => (
            <li key={caution}>
              <Caption1>{caution}</Caption1>
            </li>
          ))}
        </ul>
      </div>
    </>
  );
}
