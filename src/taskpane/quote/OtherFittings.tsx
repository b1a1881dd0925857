import {
  Accordion,
  AccordionHeader,
  AccordionItem,
  AccordionPanel,
  Caption1Strong,
  makeStyles,
  tokens,
} from '@fluentui/react-components';
import { useMemo } from 'react';
import type { Catalogue } from '../../core/catalogue/catalogue';
import type { Candidate } from '../../sheets/duty/candidates';
import { ruledOutFittings, type RuledOutFitting } from '../../sheets/duty/endOptions';
import type { Demand } from '../../sheets/duty/readDuty';

const useStyles = makeStyles({
  list: { margin: 0, paddingLeft: '1.2em', fontSize: tokens.fontSizeBase200, overflowWrap: 'anywhere' },
  heading: { display: 'block', marginTop: tokens.spacingVerticalXS },
});

const isSame = (a: readonly RuledOutFitting[], b: readonly RuledOutFitting[]) => JSON.stringify(a) === JSON.stringify(b);

interface Props {
  readonly catalogue: Catalogue;
  readonly demand: Demand;
  readonly candidate: Candidate;
}

/** Fittings that fit the hose and do not suit, end by end, each with the reason. */
export function OtherFittings({ catalogue, demand, candidate }: Props) {
  const styles = useStyles();
  const [atA, atB] = useMemo(() => {
    const out = (index: 0 | 1) => ruledOutFittings(catalogue, candidate.hose, demand.ends[index], demand, candidate.ends[index]);
    return [out(0), out(1)] as const;
  }, [catalogue, demand, candidate]);
  const ends = isSame(atA, atB) ? [['Both ends', atA] as const] : [['End A', atA] as const, ['End B', atB] as const];
  const count = ends.reduce((sum, [, found]) => sum + found.length, 0);
  if (count === 0) return null;
  return (
    <Accordion collapsible>
      <AccordionItem value="fittings">
        <AccordionHeader as="h3" size="small">
          Fittings ruled out: {count}
        </AccordionHeader>
        <AccordionPanel>
          {ends.map(
            ([end, found]) =>
              found.length > 0 && (
                <section key={end} aria-label={`Fittings ruled out, ${end}`}>
                  <Caption1Strong className={styles.heading}>{end}</Caption1Strong>
                  <ul className={styles.list}>
                    {found.map(({ fitting, reason }) => (
                      <li key={fitting}>
                        {fitting}: {reason}
                      </li>
                    ))}
                  </ul>
                </section>
              ),
          )}
        </AccordionPanel>
      </AccordionItem>
    </Accordion>
  );
}
