import { FRESH_DUTY, type DutyText } from '../../../src/sheets/duty/dutyFields';
import { readDuty, type Demand } from '../../../src/sheets/duty/readDuty';

/** A loader's lift line of the invented workshop. */
export const LIFT: DutyText = {
  ...FRESH_DUTY,
  fluid: 'mineral oil',
  grade: '46',
  flow: '60',
  fastest: '5.5',
  pressure: '180',
  surge: '210',
  fluidColdest: '-10',
  fluidHottest: '80',
  airColdest: '-20',
  airHottest: '40',
  route: [
    { kind: 'straight', length: '300' },
    { kind: 'bend', radius: '220', angle: '90', turn: 'left' },
    { kind: 'straight', length: '250' },
  ],
  slack: '6',
  formA: '24° cone L',
  angleA: '90',
  formB: '24° cone L',
  quantity: '4',
};

/** A form that has to be without mistakes, as a demand. */
export function demandOf(change: Partial<DutyText> = {}): Demand {
  const { demand, mistakes } = readDuty({ ...LIFT, ...change });
  if (!demand) throw new Error(JSON.stringify(mistakes));
  return demand;
}
