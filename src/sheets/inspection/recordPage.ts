import { WHERE_TO_MEASURE } from '../print/cautions';
import { markup, printPage, type Markup } from '../print/markup';
import type { InspectionRecord, RecordCrimp, RecordOptions, TestResult } from './inspectionRecord';
import {
  crimpLimits,
  diameter,
  proofFacts,
  readingCount,
  readingTexts,
  sameCoupling,
  RECORD_CAUTIONS,
  recordStops,
  verdictText,
  workFacts,
  type Fact,
} from './recordFacts';
import { RECORD_STYLE } from './recordStyle';

function factList(facts: readonly Fact[]): Markup {
  const items = facts.map(({ label, value }) => markup`<div><dt>${label}</dt><dd>${value}</dd></div>`);
  return markup`<dl>${items}</dl>`;
}

function crimpRow(crimp: RecordCrimp, record: InspectionRecord, readings: number): Markup {
  const { unit } = record;
  const coupling = sameCoupling(record) ? '' : markup`<td class="name">${crimp.fitting}</td>`;
  const cells = readingTexts(record, crimp, readings).map(text => markup`<td>${text}</td>`);
  return markup`<tr><th scope="row">${crimp.piece}</th><td>${crimp.end}</td>${coupling}<td>${crimp.die}</td><td>${crimp.dial}</td>${cells}
<td><b>${diameter(crimp.mean, unit)}</b></td><td class="limits">${crimpLimits(crimp)}</td><td>${crimp.spread?.toString() ?? ''}</td><td class="verdict"><b>${verdictText(crimp)}</b></td></tr>`;
}

function crimpTable(record: InspectionRecord): Markup {
  const readings = readingCount(record);
  const numbers = Array.from({ length: readings }, (_, index) => markup`<th>${index + 1}</th>`);
  return markup`<table class="crimps"><caption>Crimp diameters in ${record.unit}: ${WHERE_TO_MEASURE}. The mean counts.</caption>
<thead><tr><th>piece</th><th>end</th>${sameCoupling(record) ? '' : markup`<th>coupling</th>`}<th>die</th><th>dial</th>${numbers}<th>mean</th><th>limits</th><th>spread</th><th>verdict</th></tr></thead>
<tbody>${record.crimps.map(crimp => crimpRow(crimp, record, readings))}</tbody></table>`;
}

function resultOf(name: string, noted: string): Markup {
  if (noted) return markup`<span><b>${name}: ${noted}</b></span>`;
  return markup`<span>${name}: <i class="tick"></i> none <i class="tick"></i> found</span>`;
}

function results({ leak, slip, twist }: TestResult): Markup {
  return markup`<p class="results">${resultOf('Leak', leak)}${resultOf('Slip of a coupling', slip)}${resultOf('Twist', twist)}</p>`;
}

function signatures(): Markup {
  const line = (what: string) => markup`<div><span class="line"></span><small>${what}</small></div>`;
  return markup`<div class="signatures">${['Date', 'Signature, made and measured', 'Signature, tested', 'Released'].map(line)}</div>`;
}

function recordMarkup(record: InspectionRecord, options: RecordOptions): Markup {
  const stops = recordStops(record).map(stop => markup`<p class="stop"><b>LOOK</b> ${stop}</p>`);
  return markup`<article class="record"><header><h1>Inspection record</h1><p><b>${record.title}</b>${record.label && ` · ${record.label}`}</p></header>
${stops}${factList(workFacts(record, options))}${crimpTable(record)}
<section class="proof"><h2>Proof test</h2>${factList(proofFacts(record, options))}${results(options.result)}
${signatures()}<footer>${options.source}, printed ${options.today}. ${RECORD_CAUTIONS.join(' ')}</footer></section></article>`;
}

/** Inspection records as a page that a browser prints: each line begins a new page; what is not known is a line to write on. */
export function recordPage(records: readonly InspectionRecord[], options: RecordOptions): string {
  return printPage(
    'Inspection records',
    RECORD_STYLE,
    records.map(record => recordMarkup(record, options)),
  );
}
