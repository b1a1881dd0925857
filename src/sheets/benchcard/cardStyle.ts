/** Looks of the printed cards: black on white, sizes in points and millimetres, two cards on a page of A4 or Letter. */
export const CARD_STYLE = `
@page { margin: 8mm 10mm; }
* { box-sizing: border-box; }
body { margin: 0; font: 8.3pt/1.25 system-ui, "Segoe UI", "DejaVu Sans", sans-serif; color: #000; background: #fff; overflow-wrap: anywhere; }
.card { border: 0.5mm solid #000; padding: 1mm 2.5mm; margin-bottom: 1.5mm; break-inside: avoid; }
header { display: flex; justify-content: space-between; align-items: baseline; gap: 4mm; border-bottom: 0.3mm solid #000; }
h1 { font-size: 12pt; margin: 0; min-width: 0; }
header p { flex: none; max-width: 50%; text-align: right; }
header p, .facts { margin: 0.4mm 0; }
.facts { font-size: 9.5pt; }
.count { font-size: 12pt; margin-left: 3mm; white-space: nowrap; }
.stop { border: 0.7mm double #000; padding: 0.5mm 1.5mm; margin: 0.8mm 0; }
table { border-collapse: collapse; width: 100%; margin: 0.8mm 0; }
th, td { border: 0.2mm solid #555; padding: 0.3mm 1mm; text-align: left; vertical-align: middle; }
th { font-weight: 600; }
.sheet { width: 100%; max-width: 186mm; margin: 0 auto; table-layout: fixed; }
.sheet > * > tr { break-inside: avoid; }
.sheet > * > tr > td { border: 0; padding: 0 0.5mm; }
.ends tr:first-child > th, .readings tr:first-child > th { font-size: 6.5pt; font-weight: 400; }
.ends th, .ends td { overflow-wrap: normal; white-space: nowrap; }
.ends .coupling { overflow-wrap: anywhere; white-space: normal; }
.big { font-size: 17pt; line-height: 1.05; font-weight: 700; white-space: nowrap; }
.cut { text-align: center; }
.ends tr:first-child > th { white-space: normal; }
.couplings, .note { margin: 0.3mm 0; }
.checks { white-space: nowrap; }
.couplings span { margin-right: 4mm; }
.small { font-size: 8.3pt; }
.box { display: inline-block; width: 2.8mm; height: 2.8mm; border: 0.25mm solid #000; vertical-align: -0.3mm; }
.checks .box { margin-left: 3mm; }
.checks .box:first-child { margin-left: 0; }
.work { display: flex; gap: 3mm; }
ol { list-style: none; margin: 0; padding: 0; flex: 1; columns: 3; column-gap: 3mm; font-size: 7.4pt; line-height: 1.2; }
.work:has(.turn) ol { columns: 2; }
li { display: flex; gap: 1.2mm; break-inside: avoid; padding: 0.25mm 0; }
.tick { flex: none; width: 2.6mm; height: 2.6mm; border: 0.25mm solid #000; margin-top: 0.4mm; }
.turn { flex: none; width: 46mm; margin: 0; font-size: 6pt; line-height: 1.15; }
.clock { width: 25mm; display: block; margin: 0 auto; }
.readings td, .readings th { height: 4.7mm; padding: 0 1mm; text-align: center; white-space: nowrap; }
.readings tr:first-child th { height: auto; }
.readings .gap { border: 0; width: 2mm; padding: 0; }
.readings caption { text-align: left; font-size: 7pt; }
.caution { font-size: 7pt; font-weight: 600; margin: 0.6mm 0 0; }
.source { font-size: 7pt; margin: 0 0 0.8mm; }
footer { font-size: 7pt; padding-top: 1mm; }
.cautions { font-size: 6.5pt; }
@media screen { body { background: #e8e8e8; } .sheet { background: #fff; padding: 5mm; margin: 4mm auto; } }
`;
