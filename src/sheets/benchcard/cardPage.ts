import { lengthText } from '../table/lengthText';
import { countText, isTurned, lineTitle, type BenchCard, type CrimpEnd } from '../jobs/benchCard';
import {
  benchSteps,
  couplingText,
  diameterLimits,
  crimpText,
  dialText,
  pressureText,
  skiveShort,
  sourcesOf,
  stopsOf,
} from './benchSteps';
import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { lotsText } from '../pieces/cardPieces';
import { cardParts, type CardPart } from './cardParts';
import { CARD_STYLE } from './cardStyle';
import { dueText } from '../jobs/dueText';
import { BENCH_CAUTIONS, CARD_CAUTION, WHERE_TO_MEASURE } from '../print/cautions';
import { clockPicture } from '../print/clockPicture';
import { Markup, markup, printPage } from '../print/markup';
import type { ProofRule } from './proofPressure';
import { TWIST_CONVENTION, twistText } from '../print/twistAngle';

/** What stands on every card beside its line. */
export interface CardPageOptions {
  readonly rule: ProofRule;
  /** Where the data come from: sheet, catalogue handle. */
  readonly source: string;
  readonly today: string;
}

function endRow(end: CrimpEnd, unit: LengthUnit, cut: Markup | undefined): Markup {
  const small = (length: Decimal | undefined) => (length ? crimpText(length, unit) : '—');
  return markup`<tr>${cut}<th scope="row" class="big">${end.end}</th><td class="big">${small(end.insertionDepth)}</td><td class="big">${end.die ?? '—'}</td><td class="big">${dialText(end)}</td>
<td class="big">${small(end.diameter)}</td><td>${diameterLimits(end, unit) || '—'}</td><td>${skiveShort(end, unit)}</td><td>${small(end.crimpLength)}</td></tr>`;
}

function readingsTable(card: BenchCard, { pieces, part, of }: CardPart): Markup {
  const blank = (cells: number) => Array.from({ length: cells }, () => markup`<td></td>`);
  const rows = pieces.map(
    piece =>
      markup`<tr><th scope="row">${piece}</th>${blank(5)}<td class="gap"></td>${blank(5)}<td class="gap"></td><td></td><td class="boxes"><i class="box"></i> <i class="box"></i></td></tr>`,
  );
  const { limits, unit } = card;
  const range = limits ? ` ${lengthText(limits.shortest, unit)} … ${lengthText(limits.longest, unit)}` : '';
  const more = part < of ? ' Further pieces: on the next card of this line.' : '';
  return markup`<table class="readings"><caption>Readings: ${WHERE_TO_MEASURE}.${more}</caption>
<tr><th>piece</th><th>A 1</th><th>A 2</th><th>A 3</th><th>A 4</th><th>mean</th><td class="gap"></td><th>B 1</th><th>B 2</th><th>B 3</th><th>B 4</th><th>mean</th><td class="gap"></td><th>finished${range}</th><th>flushed, capped</th></tr>${rows}</table>`;
}

/** The five numbers of the work, to be read from a metre away. */
function numbersTable(card: BenchCard): Markup {
  const { cutLength, unit, quantity } = card;
  const cut = cutLength ? `${quantity || '?'} × ${lengthText(cutLength, unit)}` : '—';
  const cell = markup`<td class="big cut" rowspan="2">${cut}</td>`;
  const rows = card.ends.map((end, index) => endRow(end, unit, index === 0 ? cell : undefined));
  return markup`<table class="ends"><tr><th>cut (${unit})</th><th>end</th><th>insert (${unit})</th><th>die</th><th>dial</th><th>crimp to (${unit})</th><th>limits of the mean (${unit})</th><th>skive (${unit})</th><th>crimp length (${unit})</th></tr>${rows}</table>`;
}

/** Pieces with their lots, and what the card is for besides. */
function origin(card: BenchCard): Markup | undefined {
  const { pieces = [], due, machine } = card;
  const lots = lotsText(pieces);
  const useBy = pieces.find(piece => piece.useBy)?.useBy;
  const words = [lots, useBy && `use by ${useBy}`, due && `due ${dueText(due)}`, machine && `on ${machine}`]
    .filter(Boolean)
    .join(' · ');
  return words ? markup`<p class="facts small">${words}</p>` : undefined;
}

function clock(card: BenchCard): Markup | undefined {
  if (!isTurned(card)) return undefined;
  const { twist, overall, unit } = card;
  if (twist === undefined)
    return markup`<figure class="turn"><figcaption><b>Twist angle not stated.</b> ${TWIST_CONVENTION}</figcaption></figure>`;
  return markup`<figure class="turn">${new Markup(clockPicture(twist))}<figcaption><b>${twistText(twist, overall, unit)}.</b> ${TWIST_CONVENTION}</figcaption></figure>`;
}

function facts(card: BenchCard): Markup {
  const { unit, overall, limits } = card;
  const finished = overall ? `${lengthText(overall, unit)} ${unit}` : 'not stated';
  const range = limits ? `${lengthText(limits.shortest, unit)} … ${lengthText(limits.longest, unit)}` : '';
  return markup`<p class="facts"><b>${card.hose}</b> · overall <b>${finished}</b>${range && ` (${range})`} · working pressure <b>${pressureText(card)}</b>${card.guard && ` · guard: ${card.guard}`}</p>`;
}

function headerOf(card: BenchCard, { part, of }: CardPart): Markup {
  const which = of > 1 && `card ${part} of ${of}`;
  const numbers = [card.order && `order ${card.order}`, card.assembly && `assembly ${card.assembly}`, which];
  return markup`<header><h1>${lineTitle(card)}</h1><p>${numbers.filter(Boolean).join(' · ')} <b class="count">${countText(card)}</b></p></header>`;
}

const signed = ({ source, today }: CardPageOptions) =>
  markup`<footer>Made by ______________ Date ____________ Tested by ______________ · ${source}, ${today}</footer>`;

/** A card that goes on with the readings of a line. */
const furtherCard = (card: BenchCard, part: CardPart, options: CardPageOptions): Markup =>
  markup`<article class="card more">${headerOf(card, part)}${facts(card)}${readingsTable(card, part)}<p class="caution">${CARD_CAUTION}</p>${signed(options)}</article>`;

function cardMarkup(card: BenchCard, part: CardPart, options: CardPageOptions): Markup {
  const stops = stopsOf(card);
  const steps = benchSteps(card, options.rule).map(
    step => markup`<li><span class="tick"></span><span><b>${step.name}</b> ${step.text}</span></li>`,
  );
  const checks = card.ends.every(({ isPlain }) => isPlain)
    ? undefined
    : markup`<span class="checks"><i class="box"></i> machine checked today <i class="box"></i> trial piece in spec</span>`;
  const couplings = card.ends.map(end => markup`<span><b>${end.end}</b> ${couplingText(end)}</span> `);
  return markup`<article class="card">${headerOf(card, part)}
${facts(card)}${origin(card)}${stops.map(stop => markup`<p class="stop"><b>STOP</b> ${stop}</p>`)}
${numbersTable(card)}<p class="couplings">${couplings}${checks}</p>
${sourcesOf(card) && markup`<p class="source">${sourcesOf(card)}</p>`}
<div class="work"><ol>${steps}</ol>${clock(card)}</div>${readingsTable(card, part)}
${card.note && markup`<p class="note"><b>Note:</b> ${card.note}</p>`}<p class="caution">${CARD_CAUTION}</p>${signed(options)}</article>`;
}

/**
 * Bench cards as a page that a browser prints: one card a line, as many a page of A4 or Letter as go on it (two, as a rule). They are
 * rows of a table, for browsers repeat the foot of a table, here the cautions, on every page.
 */
export function cardPage(cards: readonly BenchCard[], options: CardPageOptions): string {
  const all = cards.flatMap(card =>
    cardParts(card).map(part => (part.part === 1 ? cardMarkup(card, part, options) : furtherCard(card, part, options))),
  );
  const rows = all.map(each => markup`<tr><td>${each}</td></tr>`);
  const foot = markup`<tfoot><tr><td class="cautions">${BENCH_CAUTIONS.join(' ')}</td></tr></tfoot>`;
  return printPage('Bench cards', CARD_STYLE, [
    markup`<table class="sheet" role="presentation">${foot}<tbody>${rows}</tbody></table>`,
  ]);
}
