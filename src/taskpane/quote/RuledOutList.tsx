import { Accordion, AccordionHeader, AccordionItem, AccordionPanel, Link, makeStyles, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import type { Catalogue } from '../../core/catalogue/catalogue';
import type { Hose } from '../../core/catalogue/tables/hosesTable';
import { Decimal } from '../../core/units/decimal';
import type { RuledOut } from '../../sheets/duty/candidates';
import { converted, UNITS_OF } from '../../sheets/duty/dutyUnits';
import { tightestBend } from '../../sheets/duty/hoseMargins';
import type { Demand } from '../../sheets/duty/readDuty';
import { RoutePicture } from './RoutePicture';

const useStyles = makeStyles({
  list: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS, margin: 0, paddingLeft: '1.2em' },
  reasons: { margin: 0, paddingLeft: '1.2em', fontSize: tokens.fontSizeBase200 },
});

interface Props {
  readonly catalogue: Catalogue;
  readonly demand: Demand;
  /** The nearest first. */
  readonly ruledOut: readonly RuledOut[];
  /** Whether the reasons are shown without being asked for. */
  readonly isOpen: boolean;
}

function lengthsOf(catalogue: Catalogue, demand: Demand, hose: Hose) {
  const as = (value: number | undefined) =>
    converted(value === undefined ? undefined : new Decimal(value), catalogue.units.length, UNITS_OF[demand.units].length);
  return { outsideDiameter: as(hose.outsideDiameter), leastRadius: as(hose.bendRadius) };
}

/** Hoses that do not suit, each with every reason; where a bend is too tight, the route can be looked at. */
export function RuledOutList({ catalogue, demand, ruledOut, isOpen }: Props) {
  const styles = useStyles();
  const [drawn, setDrawn] = useState('');
  const tightest = tightestBend(demand);
  return (
    <Accordion key={String(isOpen)} collapsible defaultOpenItems={isOpen ? 'ruled out' : []}>
      <AccordionItem value="ruled out">
        <AccordionHeader as="h2">Ruled out: {ruledOut.length}, the nearest first</AccordionHeader>
        <AccordionPanel>
          <ul className={styles.list} aria-label="Hoses ruled out">
            {ruledOut.map(({ hose, reasons }) => {
              const lengths = lengthsOf(catalogue, demand, hose);
              const isTight = tightest && lengths.leastRadius?.gt(tightest);
              return (
                <li key={hose.hose}>
                  {hose.hose}
                  <ul className={styles.reasons}>
                    {reasons.map(reason => (
                      <li key={reason}>{reason}</li>
                    ))}
                  </ul>
                  {isTight && (
                    <Link
                      as="button"
                      aria-expanded={drawn === hose.hose}
                      onClick={() => setDrawn(drawn === hose.hose ? '' : hose.hose)}
                    >
                      {drawn === hose.hose ? 'Hide the route' : 'Show where it bends too tight'}
                    </Link>
                  )}
                  {drawn === hose.hose && <RoutePicture name={hose.hose} demand={demand} {...lengths} />}
                </li>
              );
            })}
          </ul>
        </AccordionPanel>
      </AccordionItem>
    </Accordion>
  );
}
