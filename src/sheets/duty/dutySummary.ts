import { TYPED, type DutyField, type DutyText } from './dutyFields';
import { UNITS_OF } from './dutyUnits';

/** The parts of the form that fold. */
export type DutyFold = 'flow' | 'extremes' | 'route' | 'ends';

/** Fields of each part; a mistake in one of them opens it. */
const FOLD_FIELDS: Readonly<Record<DutyFold, readonly DutyField[]>> = {
  flow: ['flow', 'fastest', 'grade', 'viscosity', 'density'],
  extremes: ['surge', 'vacuum', 'airColdest', 'airHottest'],
  route: ['straightRun', 'slack'],
  ends: ['formA', 'angleA', 'formB', 'angleB', 'twist', 'quantity'],
};

const joined = (parts: readonly (string | false)[]) => parts.filter(Boolean).join(', ');

/** A text with what stands before and behind it; nothing where it is blank. */
const around = (before: string, text: string, behind: string) => text.trim() !== '' && `${before}${text.trim()}${behind}`;

function routeSummary({ route, slack }: DutyText): string {
  const count = route.filter(part => (part.kind === 'straight' ? part.length : part.radius).trim() !== '').length;
  return joined([count > 0 && `${count} ${count === 1 ? 'part' : 'parts'}`, around('slack ', slack, ' %')]);
}

const endSummary = (name: string, form: string, angle: string) =>
  (form + angle).trim() !== '' && `${name} ${joined([form, around('', angle, '°')])}`;

/** What stands in a part of the form, in a line: `60 L/min, at most 5.5 m/s, ISO VG 46`; "" where nothing does. */
export function foldSummary(fold: DutyFold, fields: DutyText): string {
  const units = UNITS_OF[fields.units];
  const [pressure, degrees] = [` ${units.pressure.symbol}`, ` ${units.temperature.symbol}`];
  switch (fold) {
    case 'flow':
      return joined([
        around('', fields.flow, ` ${units.flow}`),
        around('at most ', fields.fastest, ` ${units.velocity}`),
        fields.grade === TYPED ? around('', fields.viscosity, ' mm²/s') : around('ISO VG ', fields.grade, ''),
      ]);
    case 'extremes':
      return joined([
        around('surge ', fields.surge, pressure),
        fields.vacuum.trim().toLowerCase() === 'yes' ? 'vacuum' : around('vacuum ', fields.vacuum, pressure),
        around('air from ', fields.airColdest, degrees),
        around('air up to ', fields.airHottest, degrees),
      ]);
    case 'route':
      return routeSummary(fields);
    case 'ends':
      return joined([
        endSummary('A:', fields.formA, fields.angleA),
        endSummary('B:', fields.formB, fields.angleB),
        around('twist ', fields.twist, '°'),
        fields.quantity.trim() !== '1' && around('', fields.quantity, ' assemblies'),
      ]);
  }
}

/** The part of the form that a mistake is in; undefined for the fields that are always shown. */
export function foldOfMistake(key: string): DutyFold | undefined {
  if (key.startsWith('route ')) return 'route';
  return (Object.keys(FOLD_FIELDS) as DutyFold[]).find(fold => (FOLD_FIELDS[fold] as readonly string[]).includes(key));
}
