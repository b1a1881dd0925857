import type { Measure } from '../../cells/sheetCell';
import { isoDate } from '../../core/units/sheetDate';
import { convertMeasure } from '../../core/units/measureUnit';
import type { Piece } from '../pieces/piece';
import { judgeFinishedLength } from '../pieces/pieceStatus';
import type { InspectionRecord } from './inspectionRecord';

const PLACES = 3;

const numberText = (measure: Measure | undefined) => measure?.value.toDecimalPlaces(PLACES).toString() ?? '';

/** `2181 mm (2170 … 2190)`; blank limits are left out. */
function lengthOf({ finished, shortest, longest }: Piece): string {
  if (!finished) return '';
  const to = (limit: Measure | undefined) =>
    limit && { value: convertMeasure(limit.value, limit.unit, finished.unit), unit: finished.unit };
  const limits = shortest && longest ? ` (${numberText(to(shortest))} … ${numberText(to(longest))})` : '';
  return `${numberText(finished)} ${finished.unit.symbol}${limits}`;
}

/** `552 of 550 bar, 60 s`: pressure reached, pressure asked for, time. */
function testOf({ testPressure, testedAt, testedFor }: Piece): string {
  const asked = testPressure && `${numberText(testPressure)} ${testPressure.unit.symbol}`;
  const isOne = testPressure && testedAt && testPressure.unit.symbol === testedAt.unit.symbol;
  const reached = testedAt && `${numberText(testedAt)}${isOne ? '' : ` ${testedAt.unit.symbol}`}`;
  const held = testedFor === undefined ? '' : `, ${testedFor} s`;
  if (!reached) return asked ? `asked: ${asked}` : '';
  return `${reached}${asked ? ` of ${asked}` : ` ${testedAt.unit.symbol}`}${held}`;
}

function lotsOf({ lot, reel, ends, ferruleLot }: Piece): string {
  const [a, b] = ends;
  const parts = [
    lot && `hose ${lot}`,
    reel && `reel ${reel}`,
    a.lot && `A ${a.lot}`,
    b.lot && `B ${b.lot}`,
    ferruleLot && `ferrules ${ferruleLot}`,
  ];
  return parts.filter(Boolean).join(', ');
}

/** Headings of the table of pieces. */
export const RECORD_PIECE_HEADINGS = [
  'piece',
  'lots',
  'finished length',
  'length',
  'test: reached of asked',
  'done',
  'by, day',
  'use by',
];

/** Cells of a record's pieces, in the order of their headings; "" is left to write on. */
export function pieceTexts({ pieces = [] }: InspectionRecord): readonly (readonly string[])[] {
  return pieces.map(piece => [
    piece.replaces ? `${piece.piece}, in place of ${piece.replaces}` : piece.piece,
    lotsOf(piece),
    lengthOf(piece),
    piece.lengthVerdict || judgeFinishedLength(piece),
    testOf(piece),
    `${piece.flushed ? '☑' : '☐'} flushed ${piece.capped ? '☑' : '☐'} capped`,
    [piece.by, piece.date === undefined ? '' : isoDate(Math.floor(piece.date))].filter(Boolean).join(', '),
    piece.useBy,
  ]);
}
