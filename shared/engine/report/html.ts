/**
 * A document as an accessible page: the same words, tables and figures as the PDF, in elements that
 * carry their meaning.
 */

import { speakFrom } from '../words/speak.ts'
import type { Block, ChartCell, LwDocument, Pattern } from './document.ts'
import { safeLogo } from './logo.ts'

export const escaped = (text: string): string =>
	text
		.replaceAll('&', '&amp;')
		.replaceAll('<', '&lt;')
		.replaceAll('>', '&gt;')
		.replaceAll('"', '&quot;')
		.replaceAll("'", '&#39;')
/** An own figure with its name and description inside, for those who do not see it. */
export function describedSvg(svg: string, id: string, title: string, description: string): string {
	return svg
		.replace(/<svg\b/, `<svg role="img" aria-labelledby="${id}-title ${id}-desc"`)
		.replace(
			/(<svg\b[^>]*>)/,
			`$1<title id="${id}-title">${escaped(title)}</title><desc ` +
				`id="${id}-desc">${escaped(description)}</desc>`,
		)
}
const cell = ({ text, below, pattern, after }: ChartCell): string =>
	`<td${pattern ? ` class="pattern-${pattern satisfies Pattern}"` : ''}>${text ? `<strong>${escaped(text)}</strong>` : ''}${after ? ` <strong>${escaped(after)}</strong>` : ''}${below ? ` <span>${escaped(below)}</span>` : ''}</td>`
const table = (
	caption: string,
	head: readonly string[],
	rows: readonly string[],
	className = '',
): string =>
	`<table${className}><caption>${escaped(caption)}</caption><thead><tr>${head.map((text) => (text ? `<th scope="col">${escaped(text)}</th>` : '<td></td>')).join('')}</tr></thead><tbody>${rows.join('')}</tbody></table>`
const firstIsHead = (first: string, rest: string): string =>
	`<tr><th scope="row">${escaped(first)}</th>${rest}</tr>`
const tones = {
	body: 'p',
	small: 'p class="small"',
	strong: 'p class="strong"',
	lead: 'p class="lead"',
} as const

function blockHtml(block: Block, id: string): string {
	switch (block.kind) {
		case 'heading':
			return `<h${block.level === 2 ? 3 : 2}>${escaped(block.text)}</h${block.level === 2 ? 3 : 2}>`
		case 'text':
			return `<${tones[block.tone ?? 'body']}>${escaped(block.text)}</p>`
		case 'list': {
			const tag = block.ordered ? 'ol' : 'ul'
			return `<${tag}>${block.items.map((item) => `<li>${escaped(item)}</li>`).join('')}</${tag}>`
		}
		case 'actions':
			return (
				'<ol ' +
				`class="actions">${block.items.map(({ what, when, who }) => `<li><strong>${escaped(what)}</strong>${when ? ` <span>${escaped(when)}</span>` : ''}${who ? ` <span>${escaped(who)}</span>` : ''}</li>`).join('')}</ol>`
			)
		case 'alert':
			return (
				`<section class="alert" aria-labelledby="${id}"><h2 ` +
				`id="${id}">${escaped(block.title)}</h2><p>${escaped(block.text)}</p></section>`
			)
		case 'table':
			return table(
				block.caption,
				block.head,
				block.rows.map(([first = '', ...rest]) =>
					firstIsHead(
						first,
						block.head
							.slice(1)
							.map((_, at) => `<td>${escaped(rest[at] ?? '')}</td>`)
							.join(''),
					),
				),
			)
		case 'chart':
			return table(
				block.caption,
				block.head,
				block.rows.map(([first, ...rest]) =>
					firstIsHead(
						[first?.text ?? '', first?.below ?? ''].filter(Boolean).join(' '),
						rest.map(cell).join(''),
					),
				),
				' class="chart"',
			)
		case 'figure':
		case 'true-size':
			return `<figure>${describedSvg(block.svg, id, block.caption, block.alternative)}<figcaption>${escaped(block.caption)}</figcaption></figure>`
		case 'signature':
			return (
				'<p ' +
				`class="signature"><strong>${escaped(block.name)}</strong><br>${escaped(block.registration)}<br>${escaped(block.date)}</p>`
			)
	}
}
/** The logo as an address for an img element; undefined where there is none. */
export function logoUrl(logo: LwDocument['letterhead']['logo']): string | undefined {
	if (!logo) return undefined
	const safe = safeLogo(logo)
	return safe.kind === 'picture'
		? safe.dataUrl
		: `data:image/svg+xml,${encodeURIComponent(safe.svg)}`
}
/** @param style where the style sheet is, or its text (reportCss). No script stands in the page. */
export function toHtml(document: LwDocument, style: { href: string } | { css: string }): string {
	const t = speakFrom()
	const { clinicName, address, phone, email } = document.letterhead
	const logo = logoUrl(document.letterhead.logo)
	const contact = [address.join(', '), phone, email].filter((one): one is string => !!one)
	return `<!doctype html>
<html lang="${document.language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${escaped(document.title)}</title>${'href' in style ? `<link rel="stylesheet" href="${escaped(style.href)}">` : `<style>${style.css.replaceAll('<', '')}</style>`}</head>
<body class="print-${document.print ?? 'body'}"><header>${logo ? `<img src="${escaped(logo)}" alt="" width="48" height="48">` : ''}<p class="clinic">${escaped(clinicName)}</p>${contact.map((line) => `<p class="contact">${escaped(line)}</p>`).join('')}</header>
<main><h1>${escaped(document.title)}</h1>${document.draft ? `<p class="draft">${escaped(t('page.draftMark'))}</p>` : ''}<dl>${document.subject.map(([label, value]) => `<div><dt>${escaped(label)}</dt><dd>${escaped(value)}</dd></div>`).join('')}</dl>
${document.blocks.map((block, at) => blockHtml(block, `block-${at}`)).join('\n')}
${document.notes.length > 0 ? `<section class="notes" aria-labelledby="notes"><h2 id="notes">${escaped(t('page.notes'))}</h2><ol>${document.notes.map((note) => `<li>${escaped(note)}</li>`).join('')}</ol></section>` : ''}</main>
<footer><p>${escaped(document.footer)}</p></footer></body></html>
`
}
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
}
/**
 * The style sheet of the page, screen and print. @param colour the letterhead's, already dark
 * enough for text
 */
export const reportCss = (
	colour: string,
): string => `body{font:16px/1.5 'Noto Sans',sans-serif;color:#1d2726;background:#fff;max-width:46rem;margin:2rem auto;padding:0 1rem}
header{border-bottom:3px solid ${colour};padding-bottom:.5rem}header p{margin:0}.clinic{font-weight:700;font-size:1.2rem;color:${colour}}.contact{color:#56625f;font-size:.9rem}
h1{font-size:1.8rem;margin:1rem 0 .5rem}h2{font-size:1.2rem;color:${colour};margin:1.4rem 0 .4rem}h3{font-size:1rem;margin:1rem 0 .3rem}
dl{display:grid;grid-template-columns:repeat(auto-fit,minmax(16rem,1fr));gap:.2rem 1.5rem;margin:0}dl div{display:grid;grid-template-columns:6rem 1fr}dt{color:#56625f}dd{margin:0}
table{border-collapse:collapse;width:100%;margin:.5rem 0 1rem}caption{text-align:left;color:#56625f;font-size:.9rem}th,td{text-align:left;vertical-align:top;padding:.3rem .5rem;border-bottom:1px solid #cfd6d2;overflow-wrap:anywhere}thead th{color:${colour}}
.alert{border-left:5px solid #a3262a;background:#fbeeec;padding:.5rem 1rem;margin:1rem 0}.alert h2{color:#8d1f23;margin-top:0}.actions{background:#f3f1ea;padding:.6rem 1rem .6rem 2.2rem}.actions span{color:#56625f;margin-left:.5rem}
.small,.notes,figcaption,footer{font-size:.85rem;color:#56625f}.strong,.lead{font-weight:700}.lead{font-size:1.1rem}.draft{font-weight:700;color:#8d1f23}figure{margin:1rem 0}svg{max-width:100%;height:auto}svg text{font-family:inherit}
.chart td{min-width:3.5rem}.chart strong{font-size:1.3rem}${Object.entries(patternCss)
	.map(([name, css]) => `.pattern-${name}{background:${css}}`)
	.join('')}
@media print{body{margin:0;max-width:none}h2,h3,caption{break-after:avoid}tr,figure,.alert,.actions,.signature{break-inside:avoid}thead{display:table-header-group}}
`
