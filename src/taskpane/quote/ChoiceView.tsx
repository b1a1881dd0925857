import {
  Body1,
  Button,
  Field,
  makeStyles,
  MessageBar,
  MessageBarBody,
  MessageBarTitle,
  Select,
  Body1Strong,
  tokens,
} from '@fluentui/react-components';
import { useState } from 'react';
import type { Catalogue } from '../../core/catalogue/catalogue';
import { Decimal } from '../../core/units/decimal';
import { ToldBar, type Told } from '../controls/ToldBar';
import { choose, type Candidate, type Choice } from '../../sheets/duty/candidates';
import { converted, UNITS_OF, withUnit } from '../../sheets/duty/dutyUnits';
import type { EndOption } from '../../sheets/duty/endOptions';
import { dropLines } from '../../sheets/duty/flowInHose';
import { lengthBars } from '../../sheets/duty/lengthBars';
import { LengthPicture } from './LengthPicture';
import { MarginList } from './MarginList';
import { OtherFittings } from './OtherFittings';
import type { Demand } from '../../sheets/duty/readDuty';
import { RoutePicture } from './RoutePicture';
import { TwistPicture } from './TwistPicture';
import { costText, weakestPart } from '../../sheets/duty/choiceTexts';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM },
  narrow: { minWidth: 0, width: '100%' },
  heading: { margin: 0 },
  list: { margin: 0, paddingLeft: '1.2em' },
});

interface Props {
  readonly catalogue: Catalogue;
  readonly demand: Demand;
  readonly candidate: Candidate;
  /** False once the form has changed: what is shown is no longer what is asked. */
  readonly canInsert: boolean;
  readonly onInsert: (choice: Choice) => void;
  readonly message: Told | undefined;
}

function couplingOf(catalogue: Catalogue, demand: Demand, { fitting, insertionDepth }: EndOption): Decimal | undefined {
  if (insertionDepth === undefined) return undefined;
  const length = new Decimal(fitting.cutOff).plus(insertionDepth);
  return converted(length, catalogue.units.length, UNITS_OF[demand.units].length);
}

/** One hose that suits: its fittings, cost, margins, flow and route, and a way into the sheet. */
export function ChoiceView({ catalogue, demand, candidate, canInsert, onInsert, message }: Props) {
  const styles = useStyles();
  const [picked, setPicked] = useState<readonly [EndOption, EndOption]>(candidate.cheapest.ends);
  const choice = choose(catalogue, demand, candidate, picked);
  const { hose, lengths } = candidate;
  const unit = UNITS_OF[demand.units].length;
  const bore = converted(new Decimal(hose.bore), catalogue.units.length, unit);
  const least = hose.bendRadius === undefined ? undefined : new Decimal(hose.bendRadius);
  const set = (index: 0 | 1, name: string) => {
    const option = candidate.ends[index].find(({ fitting }) => fitting.fitting === name)!;
    setPicked(index === 0 ? [option, picked[1]] : [picked[0], option]);
  };
  const end = (index: 0 | 1) => (
    <Field label={`Fitting ${index === 0 ? 'A' : 'B'}`} size="small">
      <Select
        className={styles.narrow}
        size="small"
        value={picked[index].fitting.fitting}
        onChange={(_, { value }) => set(index, value)}
      >
        {candidate.ends[index].map(({ fitting }) => (
          <option key={fitting.fitting}>{fitting.fitting}</option>
        ))}
      </Select>
    </Field>
  );
  return (
    <div className={styles.view}>
      {end(0)}
      {end(1)}
      <Body1>{costText(choice, demand)}</Body1>
      <Body1>
        Overall length: {lengths.overall ? withUnit(lengths.overall, unit) : `not known, ${lengths.reason}`}.{' '}
        {weakestPart(catalogue, choice, demand)}
      </Body1>
      {choice.wrong.length > 0 ? (
        <MessageBar intent="error" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>Do not assemble</MessageBarTitle>
            <ul className={styles.list}>
              {choice.wrong.map(reason => (
                <li key={reason}>{reason}</li>
              ))}
            </ul>
          </MessageBarBody>
        </MessageBar>
      ) : (
        <Button appearance="primary" disabled={!canInsert} onClick={() => onInsert(choice)}>
          Insert as a row of my table
        </Button>
      )}
      <ToldBar message={message} />
      <MarginList margins={choice.margins} />
      <section aria-label="Pressure drop">
        <Body1Strong as="h3" className={styles.heading}>
          Pressure drop along the hose
        </Body1Strong>
        <ul className={styles.list}>
          {dropLines(demand, bore, lengths.overall).map(({ at, text }) => (
            <li key={at}>{at ? `${at}: ${text}` : text}</li>
          ))}
        </ul>
      </section>
      <RoutePicture
        name={hose.hose}
        demand={demand}
        outsideDiameter={lengths.outsideDiameter}
        leastRadius={converted(least, catalogue.units.length, unit)}
        angles={[picked[0].fitting.angle, picked[1].fitting.angle]}
        couplings={[couplingOf(catalogue, demand, picked[0]), couplingOf(catalogue, demand, picked[1])]}
      />
      <TwistPicture demand={demand} choice={choice} />
      <LengthPicture name={hose.hose} bars={lengthBars(lengths, unit)} />
      <OtherFittings catalogue={catalogue} demand={demand} candidate={candidate} />
    </div>
  );
}
