/**
 * The style sheet of the page: on a screen from 320 px on, in light and dark, and in print. Words are
 * never cut: a long one may be hyphenated as its language does, and only what is longer than a whole
 * line (an address) goes on in the next.
 */
import type { Pattern } from '../document.ts'

/** Pictures of the patterns in CSS; the letter beside them says the same. */
export const patternCss: Record<Pattern, string> = {
	plain: 'none',
	rising: 'repeating-linear-gradient(135deg, #0000 0 5px, #0002 5px 7px)',
	falling: 'repeating-linear-gradient(45deg, #0000 0 5px, #0002 5px 7px)',
	dots: 'radial-gradient(#0003 1.5px, #0000 2px) 0 0 / 8px 8px',
	bars: 'repeating-linear-gradient(90deg, #0000 0 5px, #0002 5px 7px)',
	grid:
		'repeating-linear-gradient(0deg, #0000 0 6px, #0002 6px 7px), ' +
		'repeating-linear-gradient(90deg, #0000 0 6px, #0002 6px 7px)',
	lines: 'repeating-linear-gradient(0deg, #0000 0 5px, #0002 5px 7px)',
	crosses:
		'repeating-linear-gradient(45deg, #0000 0 6px, #0002 6px 7px), ' +
		'repeating-linear-gradient(135deg, #0000 0 6px, #0002 6px 7px)',
	checks: 'conic-gradient(#0002 25%, #0000 0 50%, #0002 0 75%, #0000 0) 0 0 / 8px 8px',
	dark: 'linear-gradient(#0003, #0003)',
	dashes: 'linear-gradient(90deg, #0003 60%, #0000 0) 0 0 / 10px 3px',
	half: 'linear-gradient(#0000 50%, #0003 0)',
}
const patternRules = Object.entries(patternCss).map(
	([name, css]) => `.pattern-${name}{background:${css}}`,
)
/** Colours by name; in the dark the letterhead's is mixed with white until it can be read. */
const light = (colour: string): string =>
	`--ink:#1d2726;--quiet:#56625f;--paper:#fff;--line:#cfd6d2;--own:${colour};` +
	'--stop:#8d1f23;--stop-edge:#a3262a;--stop-paper:#fbeeec;--act-paper:#f3f1ea'
const dark = (colour: string): string =>
	`--ink:#e8edea;--quiet:#b4c0bb;--paper:#151b1a;--line:#46524e;` +
	`--own:color-mix(in srgb,${colour} 30%,#fff);` +
	'--stop:#ffb4ad;--stop-edge:#ff897d;--stop-paper:#3a1d1c;--act-paper:#232b29'
const colours = (colour: string): string[] => [
	`:root{color-scheme:light dark;${light(colour)}}`,
	`@media (prefers-color-scheme:dark){:root{${dark(colour)}}}`,
	// paper is white, whatever the screen is
	`@media print{:root{color-scheme:light;${light(colour)}}}`,
]
const text = [
	"body{font:16px/1.5 'Noto Sans',sans-serif;color:var(--ink);background:var(--paper);",
	'max-width:46rem;margin:2rem auto;padding:0 1rem;',
	'overflow-wrap:break-word;hyphens:auto;hyphenate-limit-chars:8 4 4}',
	// a table of many columns takes more room than lines of words do
	'body.print-wall,body:has(table.wide){max-width:76rem}',
	'main>p,main>ul,main>ol,main>section{max-width:46rem}',
	'header{border-bottom:3px solid var(--own);padding-bottom:.5rem}header p{margin:0}',
	'.clinic{font-weight:700;font-size:1.2rem;color:var(--own)}',
	'.contact{color:var(--quiet);font-size:.9rem}',
	'h1,h2,h3,.clinic,.headline{hyphens:manual}',
	'h1{font-size:1.8rem;line-height:1.25;margin:1rem 0 .5rem}',
	'h2{font-size:1.2rem;color:var(--own);margin:1.4rem 0 .4rem}',
	'h3{font-size:1rem;margin:1rem 0 .3rem}',
	'li{margin:.2rem 0}',
	'.small,.notes,figcaption,footer{font-size:.9rem;color:var(--quiet)}',
	'.strong,.lead,.headline{font-weight:700}.lead{font-size:1.1rem}',
	'.headline{font-size:1.6rem;line-height:1.2}',
	'.draft{font-weight:700;color:var(--stop)}',
]
const groups = [
	'dl{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(16rem,100%),1fr));',
	'gap:.2rem 1.5rem;margin:0}',
	'dl div{display:grid;grid-template-columns:7rem minmax(0,1fr);gap:0 .5rem}',
	'dt{color:var(--quiet)}dd{margin:0}',
	'dl.facts{display:block}dl.facts div{grid-template-columns:minmax(5rem,9rem) minmax(0,1fr)}',
	'.alert{border-left:5px solid var(--stop-edge);background:var(--stop-paper);',
	'padding:.5rem 1rem;margin:1rem 0}',
	'.alert h2{color:var(--stop);margin-top:0}.alert.large h2{font-size:1.6rem;line-height:1.2}',
	'.actions{background:var(--act-paper);padding:.6rem 1rem .6rem 2.2rem}',
	'.actions span{color:var(--quiet);margin-left:.5rem}',
	'.boxed{border:1px solid var(--own);padding:.5rem 1rem;margin:1rem 0}.boxed h2{margin-top:0}',
	// as many side by side as have room: on a telephone one under the other
	'.beside{display:grid;gap:0 1.5rem;',
	'grid-template-columns:repeat(auto-fit,minmax(min(18rem,100%),1fr))}',
	'.beside>div{min-width:0}',
]
const figures = [
	'figure{margin:1rem 0}svg{max-width:100%;height:auto}svg text{font-family:inherit}',
	// what is drawn is drawn for white paper
	'figure svg{background:#fff}',
	'.drawn{overflow-x:auto}.drawn svg{max-width:none}',
	'.drawn:focus-visible{outline:3px solid var(--own);outline-offset:2px}',
	// a drawing made for a column takes it: its words grow with it
	'.beside svg{width:100%;max-width:26rem}',
]
const tables = [
	'table{border-collapse:collapse;width:100%;margin:.5rem 0 1rem}',
	'caption{text-align:left;color:var(--quiet);font-size:.9rem}',
	'th,td{text-align:left;vertical-align:top;padding:.3rem .5rem;',
	'border-bottom:1px solid var(--line)}',
	'thead th{color:var(--own)}',
	'.number{text-align:right;font-variant-numeric:tabular-nums}',
	'.chart td{min-width:3.5rem}.chart strong{font-size:1.3rem}',
]
/** Each row as a block, each cell as a line under the name of its column. */
const stacked = (which: string): string =>
	[
		`${which},${which} tbody,${which} tr,${which} tbody th,${which} tbody td,${which} caption`,
		'{display:block}',
		// still read out where it cannot be seen
		`${which} thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}`,
		`${which} tr{border-bottom:1px solid var(--line);padding:.4rem 0}`,
		`${which} th,${which} td{border:0;padding:.1rem 0;text-align:left;min-width:0}`,
		`${which} .number{text-align:left}`,
		`${which} tbody td:empty{display:none}`,
		`${which} td[data-head]::before{content:attr(data-head) ': ';color:var(--quiet)}`,
		// the name of the column is spoken with the cell already
		`${which} td[data-head]::before{content:attr(data-head) ': ' / ''}`,
		`${which} td[class^=pattern]{padding:.1rem .4rem}`,
	].join('')
const narrow = [
	'@media screen and (max-width:34rem){dl.facts div{grid-template-columns:minmax(0,1fr)}',
	'dl.facts dt{margin-top:.4rem}dl div{grid-template-columns:6rem minmax(0,1fr)}',
	`${stacked('table')}}`,
	`@media screen and (max-width:64rem){${stacked('table.wide')}}`,
]
/** The pattern is drawn on white, where it can be told from the others. */
const darkPatterns =
	'@media (prefers-color-scheme:dark){[class^=pattern]{background-color:#e9edeb!important;' +
	'color:#1d2726}[class^=pattern]::before{color:#1d2726!important}}'
const print = [
	'@media print{body,body.print-wall{margin:0;padding:0;max-width:none}',
	'h2,h3,caption{break-after:avoid}',
	'tr,figure,.alert,.actions,.boxed,.signature{break-inside:avoid}.new-page{break-before:page}',
	'thead{display:table-header-group}.drawn{overflow:visible}.drawn svg{max-width:100%}',
	'[class^=pattern]{print-color-adjust:exact}',
	// a millimetre drawn is one on paper, if the paper holds it
	'.true-size .drawn svg{max-width:none}}',
]
/** @param colour the letterhead's, already dark enough for text */
export const reportCss = (colour: string): string =>
	[
		...colours(colour),
		...text,
		...groups,
		...figures,
		...tables,
		...patternRules,
		...narrow,
		darkPatterns,
		...print,
	]
		.map((rule) => `${rule}\n`)
		.join('')
