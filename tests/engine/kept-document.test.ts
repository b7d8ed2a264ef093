/** A document that is kept is read again by every version: nothing of it vanishes in silence. */
import { describe, expect, it } from 'vitest'
import { readValue } from '../../shared/desk/ledger/ledger.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { reportCss } from '../../shared/engine/report/html/style.ts'
import { toHtml } from '../../shared/engine/report/html.ts'
import { documentVersion, type KeptDocument } from '../../shared/engine/report/kept/form.ts'
import { keptDigest, keptForm, logoDigest } from '../../shared/engine/report/kept/keep.ts'
import { type LogoOf, readDocument } from '../../shared/engine/report/kept/read.ts'
import type { DocumentStep } from '../../shared/engine/report/kept/steps.table.ts'
import { kindNames, kinds } from '../../shared/engine/report/kinds.ts'
import { clinic } from '../demo.ts'
import { demoNames, inputOf, measured } from '../host/kind-input.ts'

const logo = { mediaType: 'image/svg+xml' as const, base64: 'PHN2Zy8+' }
const none = () => undefined
/** The demo clinic's own logo, where its letterhead stands. */
const ofClinic: LogoOf = (sha256) =>
	clinic.logo && logoDigest(clinic.logo) === sha256 ? clinic.logo : undefined
/** Every kind that applies to the demo's visits. */
const documents: LwDocument[] = demoNames.flatMap((name) =>
	kindNames.flatMap((kind) => {
		const input = inputOf(measured(name), kind)
		return kinds[kind].problems(input).length > 0 ? [] : [kinds[kind].compose(input)]
	}),
)
const stored = (document: LwDocument): KeptDocument =>
	JSON.parse(JSON.stringify(keptForm(document)))
const read = (kept: KeptDocument, steps?: readonly DocumentStep[]): LwDocument => {
	const answer = readDocument(kept, ofClinic, steps)
	if (answer.state !== 'read') throw new Error('unreadable')
	return answer.document
}
const page = (document: LwDocument) => toHtml(document, { css: reportCss('#1d2726') })
const [one = documents[0]!] = documents
/** A kept document with changes to what it holds. */
const changed = (change: Record<string, unknown>, version = documentVersion): KeptDocument => ({
	version,
	content: { ...stored(one).content, ...change },
})

describe('a kept document', () => {
	it('of every kind is read as it was, and shows the very same page', () => {
		expect(new Set(documents.map(({ kind }) => kind)).size).toBeGreaterThanOrEqual(6)
		for (const document of documents) {
			const again = read(stored(document))
			expect({ ...again, furniture: undefined }).toEqual({ ...document, furniture: undefined })
			expect(page(again)).toBe(page(document))
		}
	})
	it('has one digest, whatever it went through', () => {
		expect(keptDigest(stored(one))).toBe(keptDigest(keptForm(one)))
		expect(keptDigest(changed({ title: 'Another' }))).not.toBe(keptDigest(keptForm(one)))
	})
	it('carries its logo by digest, and says where it is not found', () => {
		const withLogo = { ...one, letterhead: { ...one.letterhead, logo } }
		const kept = stored(withLogo)
		expect(JSON.stringify(kept)).not.toContain(logo.base64)
		const found = readDocument(kept, (sha256) => (sha256 === logoDigest(logo) ? logo : undefined))
		expect(found).toMatchObject({ state: 'read', document: { letterhead: { logo } } })
		expect(JSON.stringify(read(kept).blocks[0])).toContain('logo is not in the records')
	})
	it('of version 0.1.0, with its logo in it, is read as version 1', () => {
		const layout = { ...one, letterhead: { ...one.letterhead, logo } }
		const again = read({ version: 1, content: JSON.parse(JSON.stringify(layout)) })
		expect(again).toEqual(layout)
	})
	it('of the outbox of version 0.1.0 is found in its record', () => {
		const layout = JSON.parse(JSON.stringify(one))
		const value = {
			...{ documentId: 'd', visitId: 'v', playerId: 'p', kind: 'player', version: 1 },
			...{ sha256: 's', base64: '', recipientId: 'player', at: '2027-01-20', by: 'A. Example' },
		}
		expect(readValue('document', 1, { ...value, layout })).toMatchObject({
			state: 'read',
			value: { ...value, document: { version: 1, content: layout } },
			unknown: [],
		})
		expect(readValue('document', 1, value)).toMatchObject({ state: 'read', value, unknown: [] })
	})
	it('of an older form is brought up step by step, each step once and in order', () => {
		const steps: DocumentStep[] = [
			({ headline, ...content }) => ({ ...content, title: headline }),
			(content) => ({ ...content, title: `${content.title}, checked` }),
		]
		const { title, ...content } = stored(one).content
		expect(read({ version: 1, content: { ...content, headline: 'As then' } }, steps).title).toBe(
			'As then, checked',
		)
		expect(read({ version: 2, content: { ...content, title: 'Later' } }, steps).title).toBe(
			'Later, checked',
		)
		expect(read({ version: 3, content: { ...content, title } }, steps).title).toBe(title)
	})
	it('whose upgrade fails is read as far as it goes', () => {
		const fails: DocumentStep = () => {
			throw new TypeError('not as expected')
		}
		expect(read(stored(one), [fails]).title).toBe(one.title)
	})
})
describe('a kept document of a newer version', () => {
	const newer = documentVersion + 1
	it('is drawn as far as it is known, an unknown block as its words', () => {
		const dial = { kind: 'dial', tone: 'loud', title: 'Push-off', marks: [{ says: 'soft' }] }
		const kept = changed({ blocks: [dial, { kind: 'text', text: 'Known words' }] }, newer)
		const answer = readDocument(kept, none)
		expect(answer).toMatchObject({ state: 'read', newer: true })
		const { blocks } = read(kept)
		expect(blocks).toContainEqual({ kind: 'list', items: ['Push-off', 'soft'] })
		expect(blocks).toContainEqual({ kind: 'text', text: 'Known words' })
		expect(JSON.stringify(blocks)).toMatch(/newer version of the program wrote this part/)
		expect(JSON.stringify(blocks)).not.toContain('loud')
	})
	it('keeps the words of a field that is not known', () => {
		const { blocks } = read(
			changed({ blocks: [{ kind: 'alert', title: 'Rest', text: 'A week', why: 'It is sore' }] }),
		)
		expect(blocks).toContainEqual({ kind: 'alert', title: 'Rest', text: 'A week' })
		expect(blocks).toContainEqual({ kind: 'list', items: ['It is sore'] })
		const around = read(changed({ motto: 'Walk well' }, newer)).blocks
		expect(around).toContainEqual({ kind: 'list', items: ['Walk well'] })
	})
	it('never runs what stands in a drawing', () => {
		const svg = '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'
		const figure = { kind: 'figure', caption: 'Feet', alternative: 'Two feet', svg }
		const html = page(read(changed({ blocks: [{ ...figure, widthPt: 10, heightPt: 10 }] })))
		expect(html).not.toContain('<script')
		expect(html).toContain('Two feet')
	})
	it('with another frame is said to be unreadable, and nothing is thrown', () => {
		for (const content of [{}, { title: 5 }, { title: 'x', letterhead: null, blocks: 'none' }])
			expect(readDocument({ version: newer, content }, none)).toEqual({
				state: 'unreadable',
				newer: true,
			})
	})
})
