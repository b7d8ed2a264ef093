/** A logo is proved drawable when it is chosen; one that was kept before never stops a page. */
import { describe, expect, it } from 'vitest'
import { renderPdf } from '../../electron/pdf/render.ts'
import { ClinicMemory } from '../../electron/services/clinic/memory.ts'
import { assess } from '../../shared/engine/assess.ts'
import { need } from '../../shared/engine/plain/need.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { toHtml } from '../../shared/engine/report/html.ts'
import { playerReport } from '../../shared/engine/report/player.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { clinic as demoClinic, json, read } from '../demo.ts'
import { clinic, folder, open, passphrase } from './bench-app.ts'
import { chunk, cut, jpegPicture, png, rawOf, spoilt, svgPicture } from './pictures.ts'
import { pagesOf, wordsOf } from './read-pages.ts'

type Logo = NonNullable<LwDocument['letterhead']['logo']>
const logo = (bytes: Buffer | string, mediaType: Logo['mediaType'] = 'image/png'): Logo => ({
	mediaType,
	base64: Buffer.from(bytes).toString('base64'),
})
const wrongFilter = (form = {}) => rawOf(form).fill(9)
const animation = [chunk('acTL', Buffer.alloc(8)), chunk('fcTL', Buffer.alloc(26))]
const transparent = [chunk('tRNS', Buffer.from([0]))]

const svgWithMore: [string, string, string][] = [
	['a script', '<script>alert(1)</script>', '<script>'],
	['an event', '<g onload="alert(1)"/>', 'onload'],
	['a style sheet', '<style>path{fill:red}</style>', '<style>'],
	['words', '<text x="1">Clinic</text>', '<text>'],
	['an outer picture', '<image href="http://example.org/a.png"/>', '<image>'],
	['an outer colour', '<path fill="url(http://example.org/#a)"/>', 'fill'],
	['a link', '<a href="#a"></a>', '<a>'],
]
const deep = `<svg viewBox="0 0 9 9">${'<g>'.repeat(20_000)}${'</g>'.repeat(20_000)}</svg>`
const noted =
	'<?xml version="1.0"?><!-- made by hand --><svg viewBox="0 0 9 9"><metadata>x</metadata>' +
	'<path d="M0 0L9 9"/></svg>'
const good: [string, Logo][] = [
	['an SVG', logo(svgPicture, 'image/svg+xml')],
	['an SVG with notes', logo(noted, 'image/svg+xml')],
	['the logo of the demo', need(demoClinic.logo, 'logo')],
	['a PNG with transparency', logo(png())],
	['a PNG without', logo(png({ colour: 2 }))],
	['a grey PNG of 16 bits', logo(png({ colour: 0, depth: 16 }))],
	['a PNG of a palette', logo(png({ colour: 3, depth: 8, before: transparent }))],
	['a JPEG', logo(jpegPicture(), 'image/jpeg')],
]
const bad: [string, Logo, string][] = [
	['a PNG cut short', logo(cut(png(), 0.7)), 'ends before its end'],
	['a PNG with a wrong check sum', logo(spoilt(png(), png().length - 14)), 'check sums are wrong'],
	['a PNG of spoilt data', logo(png({ raw: rawOf({}).subarray(0, 50) })), 'bytes where'],
	['a PNG with a row of no filter', logo(png({ raw: wrongFilter() })), 'no known filter'],
	['a PNG of nothing', logo(cut(png(), 0.05)), 'no picture'],
	['a PNG that moves', logo(png({ before: animation })), 'that moves'],
	['a PNG of a form there is none of', logo(png({ colour: 6, depth: 4 })), 'a form that there is'],
	['bytes after the end', logo(Buffer.concat([png(), Buffer.from('x')])), '1 bytes after its end'],
	['a PNG too large', logo(png({ width: 4001 })), '4001 x 40 pixels, allowed: 32 to 4000'],
	['a PNG too small', logo(png({ width: 8 })), '8 x 40 pixels'],
	[
		'a PNG called JPEG',
		logo(png(), 'image/jpeg'),
		'given a picture of image/png called image/jpeg',
	],
	['a JPEG called PNG', logo(jpegPicture()), 'given a picture of image/jpeg called image/png'],
	['a JPEG cut short', logo(cut(jpegPicture(), 0.8), 'image/jpeg'), 'cannot be decoded'],
	['a JPEG of two bytes', logo(Buffer.from([0xff, 0xd8]), 'image/jpeg'), 'header of its frame'],
	['text', logo('not a picture'), 'no picture that is known here'],
	['an SVG called PNG', logo(svgPicture), 'given a picture of image/svg+xml called image/png'],
	...svgWithMore.map(([name, inside, words]): [string, Logo, string] => [
		name,
		logo(`<svg viewBox="0 0 9 9">${inside}<path d="M0 0L9 9"/></svg>`, 'image/svg+xml'),
		words,
	]),
	['an SVG without size', logo('<svg><path d="M0 0"/></svg>', 'image/svg+xml'), 'no size'],
	['an SVG of no height', logo('<svg viewBox="0 0 9 0"/>', 'image/svg+xml'), '9 x 0'],
	['an SVG that does not end', logo('<svg viewBox="0 0 9 9"><g>', 'image/svg+xml'), 'not all end'],
	[
		'an SVG of declarations',
		logo(`<svg>${'<!DOCTYPE ['.repeat(40_000)}`, 'image/svg+xml'),
		'no size',
	],
	['an SVG too deep', logo(deep, 'image/svg+xml'), 'it cannot be drawn'],
]
const set = async (head = {}) => {
	const app = open(folder(), undefined, renderPdf)
	await app.ask('session.setUp', { clinic: { ...clinic, ...head }, passphrase })
	return app
}
describe('a logo that is chosen', () => {
	it.each(good)('%s is kept and drawn', async (_, given) => {
		const app = await set()
		await app.ask('clinic.save', { ...clinic, logo: given })
		expect((await app.ask('clinic.get')).logo).toEqual(given)
		expect((await app.ask('session.status')).warnings).toEqual([])
	})
	it('is refused in words, and nothing is changed', async () => {
		const app = await set()
		for (const [name, given, words] of bad) {
			const { code, problems } = await app.refused('clinic.save', { ...clinic, logo: given })
			expect(code, name).toBe('clinic.logo')
			expect(problems?.[0]?.path, name).toBe('logo')
			expect(problems?.[0]?.message, name).toContain(words)
		}
		expect(await app.ask('clinic.get')).not.toHaveProperty('logo')
	})
	it('is refused at set-up before anything is made', async () => {
		const app = open(folder(), undefined, renderPdf)
		const { problems } = await app.refused('session.setUp', {
			clinic: { ...clinic, logo: logo(cut(png(), 0.7)) },
			passphrase,
		})
		expect(problems?.[0]?.path).toBe('clinic.logo')
		expect((await app.ask('session.status')).state).toBe('needs-setup')
	})
})

/** Kept by an earlier version, which looked at the header alone. */
const kept: [string, Logo][] = [
	...bad
		.filter(
			([name]) =>
				!/^(an? SVG|a script|an event|a style|words|an outer|a link|a PNG called JPEG|a JPEG called PNG|bytes after)/.test(
					name,
				),
		)
		.filter(([name]) => !/^(a PNG with a wrong check sum|a JPEG cut short)/.test(name))
		.map(([name, given]): [string, Logo] => [name, given]),
	['an SVG without size', logo('<svg><path d="M0 0"/></svg>', 'image/svg+xml')],
	['an SVG that does not end', logo('<svg viewBox="0 0 9 9"><g>', 'image/svg+xml')],
	['a JPEG of nothing', logo(Buffer.from([0xff, 0xd8, 0xff, 0xd9]), 'image/jpeg')],
]
const visit = read(json('visit-adult.json'))
const page = (given?: Logo) => {
	const document = playerReport({
		visit,
		assessment: assess(visit),
		decisions: noDecisions,
		clinic: demoClinic,
		signedAt: '2027-02-01T09:00:00.000Z',
		draft: false,
	})
	return { ...document, letterhead: { ...document.letterhead, ...(given && { logo: given }) } }
}
describe('a logo that was kept before', () => {
	it.each(kept)('%s: the page is drawn without it, and the setting is named', async (_, given) => {
		const pages = await pagesOf(await renderPdf(page(given)))
		expect(wordsOf(pages)).toContain(visit.player.familyName)
		expect(toHtml(page(given), { css: '' }).includes(visit.player.familyName)).toBe(true)
		const memory = new ClinicMemory()
		memory.takeLetterhead({ id: 'r', origin: 'a', tick: 1, value: { ...demoClinic, logo: given } })
		expect(memory.notices()).toEqual([
			expect.stringMatching(/cannot be drawn \(.*open Settings, Letterhead/),
		])
		memory.takeLetterhead({ id: 's', origin: 'a', tick: 2, value: demoClinic })
		expect(memory.notices()).toEqual([])
	})
	it.each<[string, Logo]>([
		['a PNG called JPEG', logo(png(), 'image/jpeg')],
		['a PNG with a wrong check sum', logo(spoilt(png(), png().length - 14))],
		['an SVG', logo(svgPicture, 'image/svg+xml')],
		['a JPEG', logo(jpegPicture(), 'image/jpeg')],
	])('%s is drawn as it is', async (_, given) => {
		expect(await renderPdf(page(given), { logoMustShow: true })).not.toEqual(
			await renderPdf(page()),
		)
		expect(toHtml(page(given), { css: '' })).toContain('<img')
	})
	it('that only the page finds fault with is left out there', async () => {
		const given = logo(deep, 'image/svg+xml')
		expect(wordsOf(await pagesOf(await renderPdf(page(given))))).toContain(visit.player.familyName)
		await expect(renderPdf(page(given), { logoMustShow: true })).rejects.toThrow(/cannot be drawn/)
	})
})

describe('the name on the letterhead', () => {
	it('is changed by the owner alone, with the entry of the owner', async () => {
		const app = await set()
		await app.ask('people.save', {
			name: 'B. Example',
			registration: 'X2',
			role: 'clinician',
			passphrase: 'another seven words here',
		})
		const renamed = { ...clinic, clinician: { name: 'B. Example', registration: 'X1' } }
		await app.ask('session.lock')
		await app.ask('session.unlock', { passphrase: 'another seven words here' })
		const { code, problems } = await app.refused('clinic.save', renamed)
		expect(code).toBe('people.owner-only')
		expect(problems).toEqual([
			{
				path: 'clinician.name',
				message: 'Clinician name is the owner\'s, given "B. Example", allowed: "A. Example"',
			},
		])
		await app.ask('clinic.save', { ...clinic, phone: '555 0100' })
		await app.ask('session.lock')
		await app.ask('session.unlock', { passphrase })
		await app.ask('clinic.save', renamed)
		expect((await app.ask('people.list')).people).toContainEqual(
			expect.objectContaining({ role: 'owner', name: 'B. Example' }),
		)
	})
})
