import { WHERE_TO_MEASURE } from '../print/cautions';
import { markup, printPage, type Markup } from '../print/markup';
import type { InspectionRecord, RecordCrimp, RecordOptions, TestResult } from './inspectionRecord';
import {
  recordedLimits,
  decisionRule,
  diameter,
  proofFacts,
  readingCount,
  readingTexts,
  sameCoupling,
  RECORD_CAUTIONS,
  recordStops,
  targetText,
  verdictText,
  workFacts,
  type RecordFact,
} from './recordFacts';
import { RECORD_PIECE_HEADINGS, pieceTexts } from './recordPieces';
import { recordResult } from './recordResult';
import { RECORD_STYLE } from './recordStyle';

function factList(facts: readonly RecordFact[]): Markup {
  const items = facts.map(({ label, value }) => markup`<div><dt>${label}</dt><dd>${value}</dd></div>`);
  return markup`<dl>${items}</dl>`;
}

function crimpRow(crimp: RecordCrimp, record: InspectionRecord, readings: number): Markup {
  const { unit } = record;
  const coupling = sameCoupling(record) ? '' : markup`<td class="name">${crimp.fitting}</td>`;
  const cells = readingTexts(record, crimp, readings).map(text => markup`<td>${text}</td>`);
  return markup`<tr><th scope="row">${crimp.piece}</th><td>${crimp.end}</td>${coupling}<td>${crimp.die}</td><td>${crimp.dial}</td>${cells}
<td><b>${diameter(crimp.mean, unit)}</b></td><td>${targetText(crimp)}</td><td class="limits">${recordedLimits(crimp)}</td><td>${crimp.spread?.toString() ?? ''}</td><td class="verdict"><b>${verdictText(crimp)}</b></td></tr>`;
}

function crimpTable(record: InspectionRecord): Markup {
  const readings = readingCount(record);
  const numbers = Array.from({ length: readings }, (_, index) => markup`<th>${index + 1}</th>`);
  return markup`<table class="crimps"><caption>Crimp diameters in ${record.unit}: ${WHERE_TO_MEASURE}. The mean counts.</caption>
<thead><tr><th>piece</th><th>end</th>${sameCoupling(record) ? '' : markup`<th>coupling</th>`}<th>die</th><th>dial</th>${numbers}<th>mean</th><th>target</th><th>limits</th><th>spread</th><th>verdict</th></tr></thead>
<tbody>${record.crimps.map(crimp => crimpRow(crimp, record, readings))}</tbody></table>`;
}

function resultOf(name: string, noted: string): Markup {
  if (noted) return markup`<span><b>${name}: ${noted}</b></span>`;
  return markup`<span>${name}: <i class="tick"></i> none <i class="tick"></i> found</span>`;
}

function results({ leak, slip, twist }: TestResult): Markup {
  return markup`<p class="results">${resultOf('Leak', leak)}${resultOf('Slip of a coupling', slip)}${resultOf('Twist', twist)}</p>`;
}

/** A record of something rejected has no line to release it on. */
function signatures(isRejected: boolean): Markup {
  const line = (what: string) => markup`<div><span class="line"></span><small>${what}</small></div>`;
  return markup`<div class="signatures">${['Date', 'Signature, made and measured', 'Signature, tested', ...(isRejected ? [] : ['Released'])].map(line)}</div>`;
}

function pieceTable(record: InspectionRecord): Markup | undefined {
  const rows = pieceTexts(record);
  if (rows.length === 0) return undefined;
  const cells = ([first = '', ...others]: readonly string[]) =>
    markup`<tr><th scope="row">${first}</th>${others.map(text => markup`<td class="name">${text}</td>`)}</tr>`;
  return markup`<table class="pieces"><caption>Pieces: lots, finished length against its limits, test</caption>
<thead><tr>${RECORD_PIECE_HEADINGS.map(heading => markup`<th>${heading}</th>`)}</tr></thead><tbody>${rows.map(cells)}</tbody></table>`;
}

function recordMarkup(record: InspectionRecord, options: RecordOptions, number: number, of: number): Markup {
  const { kind, sentence } = recordResult(record, options.result);
  const stops = recordStops(record).map(stop => markup`<p class="stop"><b>LOOK</b> ${stop}</p>`);
  return markup`<article class="record"><header><h1>Inspection record</h1><p><b>${record.title}</b>${record.label && ` · ${record.label}`} · record ${number} of ${of}</p></header>
<p class="result ${kind.replace(' ', '-')}"><b>${sentence}</b></p>${stops}${factList(workFacts(record, options))}${crimpTable(record)}
<p class="rule">${decisionRule(options, record)}</p>${pieceTable(record)}
<section class="proof"><h2>Proof test</h2>${factList(proofFacts(record, options))}${results(options.result)}
${signatures(kind === 'rejected')}<footer>${options.source}, printed ${options.today}. ${RECORD_CAUTIONS.join(' ')}</footer></section></article>`;
}

/** Inspection records as a page that a browser prints: each line begins a new page; what is not known is a line to write on. */
export function recordPage(records: readonly InspectionRecord[], options: RecordOptions): string {
  return printPage(
    'Inspection records',
    RECORD_STYLE,
    records.map((record, index) => recordMarkup(record, options, index + 1, records.length)),
  );
}
