/** The style sheet of the page, on the screen and in print. */
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
const besideRules = [
	// as many side by side as have room: on a telephone one under the other
	'.beside{display:grid;gap:0 1.5rem;',
	'grid-template-columns:repeat(auto-fit,minmax(min(18rem,100%),1fr))}',
	// a drawing made for a column takes it: its words grow with it
	'.beside svg{width:100%;max-width:26rem}',
	'.number{text-align:right;font-variant-numeric:tabular-nums}',
]
/** @param colour the letterhead's, already dark enough for text */
export const reportCss = (colour: string): string =>
	[
		[
			"body{font:16px/1.5 'Noto Sans',sans-serif;color:#1d2726;background:#fff;",
			'max-width:46rem;margin:2rem auto;padding:0 1rem}',
		],
		[
			`header{border-bottom:3px solid ${colour};padding-bottom:.5rem}`,
			'header p{margin:0}',
			`.clinic{font-weight:700;font-size:1.2rem;color:${colour}}`,
			'.contact{color:#56625f;font-size:.9rem}',
		],
		[
			'h1{font-size:1.8rem;margin:1rem 0 .5rem}',
			`h2{font-size:1.2rem;color:${colour};margin:1.4rem 0 .4rem}`,
			'h3{font-size:1rem;margin:1rem 0 .3rem}',
		],
		[
			'dl{display:grid;grid-template-columns:repeat(auto-fit,minmax(16rem,1fr));',
			'gap:.2rem 1.5rem;margin:0}',
			'dl div{display:grid;grid-template-columns:6rem 1fr}',
			'dt{color:#56625f}dd{margin:0}',
		],
		[
			'table{border-collapse:collapse;width:100%;margin:.5rem 0 1rem}',
			'caption{text-align:left;color:#56625f;font-size:.9rem}',
			'th,td{text-align:left;vertical-align:top;padding:.3rem .5rem;',
			'border-bottom:1px solid #cfd6d2;overflow-wrap:anywhere}',
			`thead th{color:${colour}}`,
		],
		[
			'.alert{border-left:5px solid #a3262a;background:#fbeeec;padding:.5rem 1rem;margin:1rem 0}',
			'.alert h2{color:#8d1f23;margin-top:0}',
			'.alert.large h2{font-size:1.6rem;line-height:1.2}',
			'.actions{background:#f3f1ea;padding:.6rem 1rem .6rem 2.2rem}',
			'.actions span{color:#56625f;margin-left:.5rem}',
		],
		[
			'.small,.notes,figcaption,footer{font-size:.85rem;color:#56625f}',
			'.strong,.lead,.headline{font-weight:700}.lead{font-size:1.1rem}',
			'.headline{font-size:1.6rem;line-height:1.2}',
			'.draft{font-weight:700;color:#8d1f23}',
			'figure{margin:1rem 0}svg{max-width:100%;height:auto}svg text{font-family:inherit}',
		],
		[
			`.boxed{border:1px solid ${colour};padding:.5rem 1rem;margin:1rem 0}.boxed h2{margin-top:0}`,
			'dl.facts{display:block}dl.facts div{grid-template-columns:minmax(5rem,9rem) 1fr}',
		],
		besideRules,
		['.chart td{min-width:3.5rem}', '.chart strong{font-size:1.3rem}', ...patternRules],
		[
			'@media print{body{margin:0;max-width:none}h2,h3,caption{break-after:avoid}',
			'tr,figure,.alert,.actions,.boxed,.signature{break-inside:avoid}.new-page{break-before:page}',
			'thead{display:table-header-group}}',
		],
	]
		.map((rules) => `${rules.join('')}\n`)
		.join('')
