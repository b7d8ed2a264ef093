/** The page of a document: how hard it is to read, its letterhead, its elements. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
	contrastWords,
	leastRatio,
	ratioOnWhite,
	textOn,
} from '../../shared/engine/report/colour.ts'
import { type Block, blocksIn, type LwDocument } from '../../shared/engine/report/document.ts'
import { blockHtml } from '../../shared/engine/report/html/blocks.ts'
import { toHtml } from '../../shared/engine/report/html.ts'
import { logoKind, logoUrl, readLogo } from '../../shared/engine/report/logo.ts'
import {
	countsOf,
	fleschEase,
	fleschKincaid,
	readabilityOf,
	smog,
	syllablesOf,
} from '../../shared/engine/report/readability.ts'
import { safeSvg } from '../../shared/engine/report/safe-svg.ts'
import { dateWords } from '../../shared/engine/words/words.ts'
import { json, read } from '../demo.ts'
import { demoNames, reportOf } from './demo-report.ts'

describe('readability', () => {
	it.each([
		[100, 8, 140, 5.805, 75.708],
		[100, 10, 130, 3.65, 86.705],
	])('%i words, %i sentences, %i syllables', (words, sentencesIn, syllables, grade, ease) => {
		const counts = {
			words,
			inSentences: words,
			sentences: sentencesIn,
			syllables,
			long: 0,
		}
		expect(fleschKincaid(counts)).toBeCloseTo(grade, 3)
		expect(fleschEase(counts)).toBeCloseTo(ease, 3)
	})
	it('SMOG and the least grade', () => {
		expect(smog({ words: 1, inSentences: 1, sentences: 30, syllables: 1, long: 30 })).toBeCloseTo(
			8.842,
			3,
		)
		expect(smog({ words: 1, inSentences: 1, sentences: 30, syllables: 1, long: 9 })).toBeCloseTo(
			6.258,
			3,
		)
		expect(
			fleschKincaid({ words: 1, inSentences: 1, sentences: 1, syllables: 1, long: 0 }),
		).toBeCloseTo(-3.4, 10)
	})
	it.each([
		['boot', 1],
		['ankle', 2],
		['measured', 2],
		['table', 2],
		['shoe', 1],
		['apophysitis', 5],
		['wanted', 2],
		['liner', 2],
		['changes', 2],
	])('%s has %i syllables', (word, count) => expect(syllablesOf(word)).toBe(count))
	it('counts sentences, and labels by their syllables alone', () => {
		const counted = { words: 8, inSentences: 8, sentences: 2, syllables: 8, long: 0 }
		expect(countsOf('Take it out now. Look at it well.')).toEqual(counted)
		expect(countsOf('Take it out now [2]', 'Look at it well. [1]')).toEqual(counted)
		expect(countsOf('A wide toe box; a flat sole')).toMatchObject({ sentences: 2 })
		expect(countsOf('Take it out now.', 'Verdict', '246 mm')).toEqual({
			words: 5,
			inSentences: 4,
			sentences: 1,
			syllables: 6,
			long: 0,
		})
		expect(countsOf('246 mm', '')).toBeUndefined()
	})
	it('counts tables, captions and small print', () => {
		const plain: LwDocument = { ...reportOf(read(json(demoNames[0]!))), footer: '', blocks: [] }
		const hard = 'Considerable incompatibilities necessitate individualised modification.'
		const pieces: Block[] = [
			{ kind: 'text', tone: 'small', text: hard },
			{ kind: 'table', caption: hard, head: [], rows: [] },
			{ kind: 'table', caption: '', head: [], rows: [['', hard]] },
			{ kind: 'figure', caption: hard, alternative: '', svg: '', widthPt: 1, heightPt: 1 },
		]
		const easy: Block = { kind: 'text', text: 'Take it out now. Look at it well.' }
		for (const piece of pieces)
			expect(readabilityOf({ ...plain, blocks: [easy, piece] })!.grade).toBeGreaterThan(
				readabilityOf({ ...plain, blocks: [easy] })!.grade + 2,
			)
	})
})

describe('letterhead', () => {
	it('darkens a colour that text could not be read in, and says so', () => {
		fc.assert(
			fc.property(fc.integer({ min: 0, max: 0xffffff }), (value) => {
				const colour = `#${value.toString(16).padStart(6, '0')}`
				const text = textOn(colour)
				expect(ratioOnWhite(text)).toBeGreaterThanOrEqual(leastRatio)
				if (ratioOnWhite(colour) >= leastRatio) expect(text).toBe(colour)
				else expect(contrastWords(colour).says).toContain(text)
			}),
		)
		expect(ratioOnWhite('#000000')).toBeCloseTo(21, 6)
	})
	it.each([
		[
			'a script',
			'<svg viewBox="0 0 9 9"><script>alert(1)</script><path d="M0 0"/></svg>',
			/script|alert/,
		],
		['an event', '<svg viewBox="0 0 9 9" onload="alert(1)"><path d="M0 0"/></svg>', /onload|alert/],
		[
			'a picture from outside',
			'<svg viewBox="0 0 9 9"><image href="http://example.org/a.png"/><path d="M0 0"/></svg>',
			/image|http/,
		],
		[
			'a style from outside',
			'<svg viewBox="0 0 9 9"><style>@import "http://example.org"</style><path d="M0 0" ' +
				'fill="url(http://example.org/#a)"/></svg>',
			/style|http/,
		],
		[
			'foreign elements',
			'<svg viewBox="0 0 9 9"><foreignObject><div><script>x</script></div></foreignObject><path ' +
				'd="M0 0"/></svg>',
			/foreign|div|script/,
		],
		[
			'an entity',
			'<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/hostname">]><svg viewBox="0 0 9 ' +
				'9"><title>&a;</title><path d="M0 0"/></svg>',
			/ENTITY|file:/,
		],
	])('takes %s out of an SVG and keeps the drawing', (_name, svg, gone) => {
		const safe = safeSvg(svg)
		expect(safe).not.toMatch(gone)
		expect(safe).toContain('<path d="M0 0"')
	})
	it('keeps a plain drawing as it is', () => {
		const plain = '<svg viewBox="0 0 9 9"><g fill="#fff"><path d="M0 0"/></g></svg>'
		expect(safeSvg(plain)).toBe(plain)
	})
	it.each(
		['<!DOCTYPE [', '<!DOCTYPE [] ', '<!--', '<![CDATA[', '<?', '<', '<g ', '<g/>a', '&#'].map(
			(piece) => [piece, piece.repeat(Math.floor(1_400_000 / piece.length))] as const,
		),
	)('reads the largest file of %j through once', (_, drawing) =>
		expect(safeSvg(`<svg viewBox="0 0 9 9">${drawing}`).slice(0, 23)).toBe(
			'<svg viewBox="0 0 9 9">',
		),
	)
	it('knows a kind by its bytes, and says what cannot be read', () => {
		const base64 = (text: string) => Buffer.from(text).toString('base64')
		expect(logoKind(Buffer.from('<?xml version="1.0"?>\n<svg viewBox="0 0 9 9"/>'))).toBe(
			'image/svg+xml',
		)
		expect(logoKind(Buffer.from([0xff, 0xd8, 0xff]))).toBe('image/jpeg')
		expect(logoKind(Buffer.from('<html>'))).toBeUndefined()
		expect(() => readLogo({ mediaType: 'image/png', base64: base64('no picture') })).toThrow(
			/no picture that is known here/,
		)
		expect(() => readLogo({ mediaType: 'image/svg+xml', base64: base64('<p>') })).toThrow(
			/without an <svg>/,
		)
		expect(logoUrl({ mediaType: 'image/svg+xml', base64: base64('<p>') })).toBeUndefined()
		const bare = base64('<svg viewBox="0 0 9 9"></svg>')
		expect(
			decodeURIComponent(logoUrl({ mediaType: 'image/svg+xml', base64: bare }) ?? ''),
		).toContain('<svg xmlns="http://www.w3.org/2000/svg" viewBox')
	})
	it('prints a caption as it was written, whatever signs stand in it', () => {
		const caption = "Costs $& or $1 and $` or $' or $$"
		const figure = {
			kind: 'figure' as const,
			caption,
			alternative: caption,
			widthPt: 9,
			heightPt: 9,
		}
		const html = blockHtml({ ...figure, svg: '<svg viewBox="0 0 9 9"></svg>' }, 'b')
		const shown = 'Costs $&amp; or $1 and $` or $&#39; or $$'
		for (const tag of ['title', 'desc', 'figcaption'])
			expect(html).toMatch(new RegExp(`<${tag}[^>]*>${shown.replace(/[$&|]/g, '\\$&')}</${tag}>`))
	})
})

describe('what stands side by side', () => {
	const measures: Block = {
		kind: 'beside',
		left: [{ kind: 'text', text: 'Read first' }],
		right: [
			{
				kind: 'table',
				caption: 'Measures',
				head: ['', 'Left'],
				rows: [['Knee to wall, cm', '7']],
				align: ['left', 'right'],
			},
		],
	}
	it('is read from left to right, its numbers under each other', () => {
		const html = blockHtml(measures, 'b')
		expect(html.indexOf('Read first')).toBeLessThan(html.indexOf('Knee to wall'))
		expect(html).toContain('<td role="cell" class="number" data-head="Left">7</td>')
		expect(html).toContain('<th scope="col" role="columnheader" class="number">Left</th>')
		expect(html).not.toContain('rowheader" class="number"')
		expect(blocksIn([measures]).map(({ kind }) => kind)).toEqual(['text', 'table'])
	})
	it('counts for readability', () => {
		const [report] = demoNames.map((name) => reportOf(read(json(name))))
		const bare = { ...report!, footer: '' }
		expect(readabilityOf({ ...bare, blocks: [measures] })).toEqual(
			readabilityOf({ ...bare, blocks: blocksIn([measures]) }),
		)
	})
})
describe('the sources of a player’s report', () => {
	it('stand on the accessible page without numbers, and in no sentence', () => {
		const report = reportOf(read(json(demoNames[0]!)))
		expect(report.notes.length).toBeGreaterThan(3)
		expect(JSON.stringify(report.blocks)).not.toMatch(/\[\d+\]/)
		expect(toHtml(report, { href: 'report.css' })).toMatch(/id="notes">[^<]+<\/h2><ul>/)
	})
})
describe('the accessible page', () => {
	it.each(demoNames)(
		'%s has one h1, no level skipped, scoped heads, captions, and described figures',
		(name) => {
			const html = toHtml(reportOf(read(json(name))), { href: 'report.css' })
			expect(html).toContain('<html lang="en">')
			expect(html.match(/<h1>/g)).toHaveLength(1)
			expect(html).not.toMatch(/<script|\son\w+=|\sstyle="/)
			expect(html.match(/<table/g)?.length).toBe(html.match(/<caption>/g)?.length)
			expect(html.match(/<th(?! scope|ead)/g)).toBeNull()
			expect(html.match(/<svg/g)?.length).toBe(html.match(/<desc /g)?.length)
		},
	)
	it('escapes what a person typed', () => {
		const visit = read({
			...json(demoNames[0]!),
			player: { ...json(demoNames[0]!).player, givenName: '<b>"A"&', club: "O'Neil" },
		})
		const html = toHtml(reportOf(visit), { href: 'a.css' })
		expect(html).toContain('&lt;b&gt;&quot;A&quot;&amp;')
		expect(html).not.toContain('<b>')
		expect(html).toContain(dateWords(visit.visitDate))
	})
})
