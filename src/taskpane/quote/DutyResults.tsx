import {
  Accordion,
  AccordionHeader,
  AccordionItem,
  AccordionPanel,
  Body1,
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
});

interface Props {
  readonly catalogue: Catalogue;
  readonly demand: Demand;
  readonly found: Candidates;
  readonly isStale: boolean;
  readonly onInsert: (choice: Choice) => void;
  /** What inserting a hose did, and which hose it was. */
  readonly told: { readonly hose: string; readonly what: Told } | undefined;
}

/** What to mind before anything is made by this answer. */
function cautions({ surge, fluid }: Demand): readonly string[] {
  return [
    surge === undefined
      ? 'No surge was given: the hoses are judged on the working pressure alone. The weakest part sets the rating, surges included.'
      : 'The weakest part sets the rating, surges included.',
    `Whether hose, seals and couplings stand ${fluid ?? 'the fluid'} at these temperatures is to be checked with their makers.`,
    'The catalogue has one range of temperature for fluid and air: the widest of both is asked of it. Fittings have no loss with temperature in it.',
    'The makers’ current data come first. Hose and couplings of different makers are mixed only with their written approval. Local law, codes and a qualified person decide.',
    'Pressure drop: straight smooth hose only; couplings and bends come on top. Oil of a grade is taken to have viscosity index 100.',
  ];
}

/** Hoses that suit, cheapest first, and those ruled out with their reasons. */
export function DutyResults({ catalogue, demand, found, isStale, onInsert, told }: Props) {
  const styles = useStyles();
  const { suitable, ruledOut } = found;
  const [isAll, setIsAll] = useState(false);
  const shown = isAll ? suitable : suitable.slice(0, FIRST_SHOWN);
  return (
    <>
      <Body1 role="status">
        {suitable.length === 0
          ? `No hose of the catalogue suits; ${ruledOut.length} are ruled out. Below is why, the nearest first.`
          : `${suitable.length} of ${suitable.length + ruledOut.length} hoses suit, cheapest first.`}
      </Body1>
      {isStale && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>The form has changed since. Find the hoses again.</MessageBarBody>
        </MessageBar>
      )}
      <Accordion collapsible defaultOpenItems={suitable[0]?.hose.hose}>
        {shown.map(candidate => (
          <AccordionItem key={candidate.hose.hose} value={candidate.hose.hose}>
            <AccordionHeader as="h3">
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
                told={told?.hose === candidate.hose.hose ? told.what : undefined}
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
        {cautions(demand).map(caution => (
          <Caption1 key={caution} block>
            {caution}
          </Caption1>
        ))}
      </div>
    </>
  );
}
