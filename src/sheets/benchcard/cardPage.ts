import { lengthText } from '../table/lengthText';
import { countText, isTurned, titleOf, type BenchCard, type CrimpEnd } from '../jobs/benchCard';
import {
  benchSteps,
  couplingText,
  crimpLimits,
  crimpText,
  dialText,
  furtherPieces,
  pressureText,
  READING_ROWS,
  skiveShort,
  sourcesOf,
  stopsOf,
} from './benchSteps';
import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { CARD_STYLE } from './cardStyle';
import { BENCH_CAUTIONS, CARD_CAUTION, WHERE_TO_MEASURE } from '../print/cautions';
import { clockPicture } from './clockPicture';
import { Markup, markup, printPage } from '../print/markup';
import type { ProofRule } from './proofTest';
import { TWIST_CONVENTION, twistText } from './twistAngle';

/** What stands on every card beside its line. */
export interface CardOptions {
  readonly rule: ProofRule;
  /** Where the data come from: sheet, catalogue handle. */
  readonly source: string;
  readonly today: string;
}

function endRow(end: CrimpEnd, unit: LengthUnit): Markup {
  const small = (length: Decimal | undefined) => (length ? crimpText(length, unit) : '—');
  return markup`<tr><th scope="row">${end.end}</th><td class="coupling">${couplingText(end)}</td>
<td>${small(end.insertionDepth)}</td><td>${skiveShort(end, unit)}</td><td class="big">${end.die ?? '—'}</td><td class="big">${dialText(end)}</td>
<td class="big">${small(end.diameter)}</td><td>${crimpLimits(end, unit) || '—'}</td><td>${small(end.crimpLength)}</td></tr>`;
}

function readingsTable(card: BenchCard): Markup {
  const pieces = Array.from({ length: Math.min(READING_ROWS, Math.max(1, card.quantity)) }, (_, index) => index + 1);
  const blank = (cells: number) => Array.from({ length: cells }, () => markup`<td></td>`);
  const rows = pieces.map(piece => markup`<tr><th scope="row">${piece}</th>${blank(5)}<td class="gap"></td>${blank(5)}</tr>`);
  return markup`<table class="readings"><caption>Readings: ${WHERE_TO_MEASURE}.${furtherPieces(card)}</caption>
<tr><th>piece</th><th>A 1</th><th>A 2</th><th>A 3</th><th>A 4</th><th>mean</th><td class="gap"></td><th>B 1</th><th>B 2</th><th>B 3</th><th>B 4</th><th>mean</th></tr>${rows}</table>`;
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

function cardMarkup(card: BenchCard, options: CardOptions): Markup {
  const stops = stopsOf(card);
  const steps = benchSteps(card, options.rule).map(
    step => markup`<li><span class="tick"></span><span><b>${step.name}</b> ${step.text}</span></li>`,
  );
  const numbers = [card.order && `order ${card.order}`, card.assembly && `assembly ${card.assembly}`].filter(Boolean).join(' · ');
  return markup`<article class="card"><header><h1>${titleOf(card)}</h1><p>${numbers} <b class="count">${countText(card)}</b></p></header>
${facts(card)}${stops.map(stop => markup`<p class="stop"><b>STOP</b> ${stop}</p>`)}
<table class="ends"><tr><th>end</th><th>coupling</th><th>insert to (${card.unit})</th><th>skive (${card.unit})</th><th>die</th><th>dial</th><th>crimp to (${card.unit})</th><th>limits of the mean (${card.unit})</th><th>crimp length (${card.unit})</th></tr>${card.ends.map(end => endRow(end, card.unit))}</table>
${sourcesOf(card) && markup`<p class="source">${sourcesOf(card)}</p>`}
<div class="work"><ol>${steps}</ol>${clock(card)}</div>${readingsTable(card)}
<p class="caution">${CARD_CAUTION}</p><footer>${card.note && markup`<b>${card.note}</b> · `}Made by ______________ Date ____________ Tested by ______________ · ${options.source}, ${options.today}</footer></article>`;
}

/**
 * Bench cards as a page that a browser prints: one card a line, as many a page of A4 or Letter as go on it (two, as a rule). They are
 * rows of a table, for browsers repeat the foot of a table, here the cautions, on every page.
 */
export function cardPage(cards: readonly BenchCard[], options: CardOptions): string {
  const rows = cards.map(card => markup`<tr><td>${cardMarkup(card, options)}</td></tr>`);
  const foot = markup`<tfoot><tr><td class="cautions">${BENCH_CAUTIONS.join(' ')}</td></tr></tfoot>`;
  return printPage('Bench cards', CARD_STYLE, [
    markup`<table class="sheet" role="presentation">${foot}<tbody>${rows}</tbody></table>`,
  ]);
}
