import { TYPEFACE } from "../drawing";

/** Of the size of the type. Letters as high in whatever type a device has: in a wider one a sheet would take a page more. */
const ARIAL_X_HEIGHT = 0.519;

/** How the sheet looks: black on white, nothing under 10 points, rows for a pencil, nothing cut by the end of a page. */
export function sheetStyle(largePrint: boolean): string {
  const [text, step, row] = largePrint ? [13.5, 16, 11] : [10, 12, 8];
  return `
@page { margin: 12mm }
* { box-sizing: border-box }
body { margin: 0 auto; max-width: 192mm; color: #000; background: #fff; font: ${text}pt/1.15 ${TYPEFACE}; font-size-adjust: ${ARIAL_X_HEIGHT}; -webkit-print-color-adjust: exact; print-color-adjust: exact }
h1, h2, h3, p, ol, ul, figure { margin: 0; padding: 0 }
h1 { font-size: 1.45em } h2 { font-size: 1.1em; margin-top: 1.6mm; break-after: avoid } h3 { font-size: 1em; break-after: avoid }
ul, ol { padding-left: 4.5mm } li { break-inside: avoid }
table { border-collapse: collapse; width: 100% } td, th { padding: 0; vertical-align: top }
.sheet > thead { display: table-header-group }
header { border-bottom: 0.7mm solid #000; margin-bottom: 1.5mm; display: flex; flex-wrap: wrap; align-items: baseline; gap: 0 4mm }
.task { font-size: 1.1em } .facts { width: 100%; display: flex; flex-wrap: wrap; justify-content: space-between; gap: 0 3mm }
.verdict { border: 0.5mm solid #000; padding: 0.8mm 1.5mm; margin-bottom: 1mm }
.verdict.live, .verdict.could-go-live { border-width: 1.2mm } .verdict.isolated { border-style: dashed } .verdict.grounded { border: 1.2mm double #000 }
.verdict { break-inside: avoid } .verdict h2 { margin: 0 } .verdict b { font-size: 1.12em }
figure { text-align: center; break-inside: avoid } figure svg { zoom: 1.12 }
figcaption { text-align: left }
.beside { display: grid; grid-template-columns: auto 1fr; gap: 4mm; align-items: start } .beside figcaption { width: 0; min-width: 100% }
.ways, .columns { line-height: 1.08 } .long .ways, .long .columns { line-height: 1.03 } .ways li.open { font-weight: bold }
.columns { columns: ${largePrint ? 1 : 2}; column-gap: 6mm }
.broken { border: 0.5mm solid #000; padding: 0.5mm 1.5mm }
.flow { columns: ${largePrint ? 1 : 2}; column-gap: 6mm }
.step { display: grid; grid-template-columns: ${largePrint ? 9 : 6}mm 5.5mm 1fr 10mm 9mm; min-height: ${row}mm; align-items: center; border-bottom: 0.25mm solid #000; break-inside: avoid; font-size: ${step}pt; line-height: 1.05 }
.heads { display: grid; grid-template-columns: ${largePrint ? "1fr" : "1fr 1fr"}; column-gap: 6mm; break-after: avoid } .heads .step, .long .heads .step { min-height: 0; font-size: 10pt; line-height: 1; font-weight: bold; border-bottom-width: 0.5mm } .heads span:nth-child(n + 4) { font-size: 8.5pt }
.step .n { font-weight: bold } .step .box { width: 4.5mm; height: 4.5mm; border: 0.5mm solid #000 }
.step .box { text-align: center; line-height: 3.6mm } .step .time { font-size: 8pt; overflow: hidden; align-content: center } .record li { font-size: 10pt }
.step .act i { font-size: ${text}pt; display: block } .step .time, .step .who { align-self: stretch; border-left: 0.25mm solid #000 }
.hold { border: 0.7mm solid #000; border-left-width: 2.5mm; padding: 0.4mm 1mm; margin-top: 0.6mm; break-inside: avoid; break-after: avoid }
.signed { white-space: nowrap } .crew table { margin-bottom: 1.5mm }
.visit { display: grid; grid-template-columns: 5.5mm 1fr; align-items: center; margin-top: 0.8mm; border-bottom: 0.5mm solid #000 } .visit .box { width: 4mm; height: 4mm; border: 0.5mm solid #000 }
.restoring { border-top: 0.7mm solid #000 }
.crew { display: flex; flex-wrap: wrap; gap: 4mm; align-items: flex-start; break-inside: avoid } .crew > div { flex: 1 1 75mm }
.crew td { height: 7mm; border: 0.25mm solid #000 } .crew th { text-align: left; font-weight: normal; border: 0.25mm solid #000; padding: 0 1mm }
.crew td, .crew th { width: 33% }
.code { width: min-content } .code svg { zoom: 1; display: block }
.caution { font-weight: bold; margin-top: 1.5mm }
.long .heads { margin-top: -4mm } .long .heads .step { border: 0 } .long .heads .step span:nth-child(-n + 3) { visibility: hidden }
.long { line-height: 1.05 } .long .step { font-size: 10pt; min-height: 5.5mm; line-height: 1 } .long .step .act i { display: inline } .long .step .box { width: 4mm; height: 4mm } .long .crew td { height: 6mm } .long .hold { padding-block: 0; margin-top: 0.2mm; line-height: 1 } .long .visit { margin-top: 0 }
@media screen { body { padding: 6mm } }
@media screen and (max-width: 190mm) {
body { padding: 3mm; font-size: ${largePrint ? 1.3 : 1}rem } figure svg { zoom: 1; max-width: 100%; height: auto }
.beside { display: block } .beside figcaption { width: auto } .columns, .flow { columns: 1 } .heads { display: block } .heads [aria-hidden] { display: none } .crew td, .crew th { overflow-wrap: anywhere } .code { width: auto; max-width: 60mm } .code svg { max-width: 100%; height: auto } }
`.replaceAll("\n", "");
}
