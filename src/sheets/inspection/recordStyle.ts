/** Looks of the printed records: black on white, sizes in points and millimetres, for A4 and Letter. */
export const RECORD_STYLE = `
@page { margin: 10mm 12mm; @bottom-right { content: counter(page) " of " counter(pages); font: 7pt sans-serif; } }
* { box-sizing: border-box; }
body { margin: 0; font: 9.5pt/1.3 system-ui, "Segoe UI", "DejaVu Sans", sans-serif; color: #000; background: #fff; }
.record { max-width: 186mm; margin: 0 auto; break-after: page; }
.record:last-child { break-after: auto; }
header { display: flex; justify-content: space-between; align-items: baseline; gap: 6mm; border-bottom: 0.5mm solid #000; }
h1 { font-size: 16pt; margin: 0; }
h2 { font-size: 12pt; margin: 2mm 0 0.5mm; }
header p { font-size: 12pt; margin: 0; text-align: right; }
.result { font-size: 12pt; border: 0.5mm solid #000; padding: 1mm 2mm; margin: 2mm 0; }
.result.rejected { border-width: 1mm; }
tbody th { white-space: nowrap; }
.rule { font-size: 7.5pt; margin: 1mm 0 2.5mm; }
.pieces td, .pieces th { font-size: 7.5pt; height: 5.5mm; overflow-wrap: anywhere; }
.stop { border: 0.7mm double #000; padding: 0.8mm 2mm; margin: 1.5mm 0; }
dl { display: grid; grid-template-columns: repeat(4, 1fr); gap: 0.8mm 4mm; margin: 1.5mm 0; }
dl div { min-width: 0; }
dl div:last-child:nth-child(4n + 1) { grid-column: 1 / -1; }
dt { font-size: 7.5pt; }
dd { margin: 0; min-height: 6mm; border-bottom: 0.2mm solid #000; font-weight: 600; overflow-wrap: anywhere; }
table { border-collapse: collapse; width: 100%; font-size: 8.5pt; }
caption { text-align: left; font-size: 7.5pt; padding-bottom: 0.8mm; }
th, td { border: 0.2mm solid #555; padding: 0.6mm 1mm; text-align: right; height: 7mm; font-variant-numeric: tabular-nums; }
thead { display: table-header-group; }
thead th { height: auto; font-weight: 400; font-size: 7.5pt; }
th, .name, .verdict { text-align: left; }
.limits { white-space: nowrap; }
tr, .proof { break-inside: avoid; }
.results { display: flex; flex-wrap: wrap; gap: 2mm 8mm; margin: 2.5mm 0; }
.tick { display: inline-block; width: 3.2mm; height: 3.2mm; border: 0.25mm solid #000; vertical-align: -0.4mm; margin-left: 1.5mm; }
.signatures { display: grid; grid-template-columns: 1fr 2fr 2fr 2fr; gap: 5mm; margin-top: 4mm; break-inside: avoid; }
.line { display: block; border-bottom: 0.3mm solid #000; height: 6mm; }
small { font-size: 7.5pt; }
footer { font-size: 7pt; margin-top: 2.5mm; }
@media screen { body { background: #e8e8e8; } .record { background: #fff; padding: 8mm; margin: 4mm auto; } }
`;
