/** Real pages: rendered in the worker, read back with an independent reader. */
import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { renderPdf } from '../../electron/pdf/render.ts'
import { assess } from '../../shared/engine/assess.ts'
import { changedTo, settleAll, withAnswer } from '../../shared/engine/prescription/answers.ts'
import { playerReport } from '../../shared/engine/report/player.ts'
import { type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import type { Feature } from '../../shared/engine/visit/terms.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { speakFrom } from '../../shared/engine/words/speak.ts'
import { spokenTo } from '../../shared/engine/words/statement.ts'
import { featureInWords } from '../../shared/engine/words/words.ts'
import { clinic, json, read } from '../demo.ts'
import { pagesOf, wordsOf } from './read-pages.ts'

const t = speakFrom()
const compose = (
	visit: Visit,
	decisions: Decisions = noDecisions,
	signedAt: string | undefined = undefined,
) =>
	playerReport({
		visit,
		assessment: assess(visit),
		decisions,
		clinic,
		signedAt,
		draft: signedAt === undefined,
	})
const settledOf = (visit: Visit, decisions: Decisions = noDecisions): Decisions =>
	settleAll(decisions, assess(visit).prescription, 'asked elsewhere')
/** Each pair without a feature that was to be looked for. */
const withoutFeature = (visit: Visit, feature: Feature): Decisions => {
	const { pairs, questions } = assess(visit).prescription
	return pairs.reduce((now, { role, seek }) => {
		const question = questions.find(({ id }) => id === `pair.${role}`)
		if (!question) return now
		const left = seek.filter((one) => one !== feature)
		return withAnswer(now, changedTo(question, { seek: left }, 'not wanted'))
	}, noDecisions)
}
describe('the player report as pages', () => {
	it.each(['visit-adolescent.json', 'visit-adult.json'])(
		'%s reads back whole, inside the margins, without broken values',
		async (name) => {
			const visit = read(json(name))
			const pages = await pagesOf(
				await renderPdf(compose(visit, settledOf(visit), '2027-02-01T09:00:00.000Z')),
			)
			expect(pages.length).toBeGreaterThanOrEqual(2)
			const text = wordsOf(pages)
			for (const sentence of [
				`${visit.player.givenName} ${visit.player.familyName}`,
				'What to do now',
				'What we found',
				'Your size',
				'Stop sport and call',
				`page ${pages.length} of ${pages.length}`,
				clinic.name,
				clinic.clinician.registration,
			])
				expect(text).toContain(sentence)
			expect(text).not.toMatch(/undefined|NaN|\bnull\b|\[object/)
			for (const item of pages.flatMap((page) => page.items)) {
				expect(item.x, item.str).toBeGreaterThanOrEqual(50)
				expect(item.x + item.width, item.str).toBeLessThanOrEqual(595.28 - 50)
			}
		},
	)
	it('gives the same bytes for the same input', async () => {
		const visit = read(json('visit-adolescent.json'))
		const [first, second] = [await renderPdf(compose(visit)), await renderPdf(compose(visit))].map(
			(bytes) => createHash('sha256').update(bytes).digest('hex'),
		)
		expect(first).toBe(second)
	})
	it('prints what was decided and not what was dropped', async () => {
		const visit = read(json('visit-adolescent.json'))
		const { findings, prescription } = assess(visit)
		const finding = findings.find(({ topic }) => topic === 'ankle')!
		const raise = prescription.questions.find(({ id }) => id === 'raise')!
		const raised = prescription.raise.pairs.map(({ pair }) => ({ pair, left: 3, right: 3 }))
		const decided = withAnswer(
			withoutFeature(visit, 'raised-heel'),
			changedTo(raise, { raise: raised }, 'comfort'),
		)
		const text = wordsOf(
			await pagesOf(
				await renderPdf(
					compose(
						visit,
						settledOf(visit, {
							...decided,
							actions: [{ what: 'Swap the match boots', when: 'this week', who: 'Rae' }],
							lines: [
								{
									findingId: finding.id,
									choice: 'change',
									says: 'Stretch the left calf every evening.',
								},
								{ findingId: 'own.1', choice: 'add', says: 'Bring both pairs next time.' },
							],
						}),
						'2027-02-01T09:00:00.000Z',
					),
				),
			),
		)
		for (const sentence of [
			'Swap the match boots',
			'Stretch the left calf every evening.',
			'Bring both pairs next time.',
			'3 mm in both shoes',
		])
			expect(text).toContain(sentence)
		expect(text.toLowerCase()).not.toContain(featureInWords('raised-heel'))
		expect(text).not.toContain(finding.says)
	})
	it('says no reason whose wish was dropped: its sentence would still ask for it', () => {
		const visit = read(json('visit-adolescent.json'))
		const said = assess(visit).footwear.target.seek.flatMap((wish) =>
			wish.feature === 'raised-heel' ? (spokenTo('player', wish) ?? []) : [],
		)
		const reasons = (decisions: Decisions): string =>
			JSON.stringify(compose(visit, decisions).blocks)
		expect(said.length).toBeGreaterThan(0)
		expect(said.some((sentence) => reasons(noDecisions).includes(sentence))).toBe(true)
		const dropped = reasons(withoutFeature(visit, 'raised-heel'))
		for (const sentence of said) expect(dropped).not.toContain(sentence)
	})
	it('names a character no font has, before anything is rendered', async () => {
		const visit = read({
			...json('visit-adult.json'),
			player: { ...json('visit-adult.json').player, givenName: 'Mei 梅' },
		})
		await expect(renderPdf(compose(visit))).rejects.toThrow(/梅 \(U\+6885\).*cannot be printed/)
	})
	it('names a character of a chart cell, wherever in the cell it stands', async () => {
		const page = compose(read(json('visit-adult.json')))
		for (const part of ['text', 'below', 'after'])
			await expect(
				renderPdf({
					...page,
					blocks: [
						{
							kind: 'chart',
							caption: 'Week',
							head: ['Day'],
							rows: [[{ text: 'A', [part]: 'B 梅' }]],
							widths: ['*'],
						},
					],
				}),
			).rejects.toThrow(/梅 \(U\+6885\)/)
	})
	it('holds an almost empty visit and a very long name', async () => {
		const visit = read({
			format: 'lastwright-visit',
			version: 1,
			visitDate: '2027-01-20',
			player: {
				givenName: 'Maximiliane-Theodora Alexandrine',
				familyName: 'von und zu Hohenbrunn-Achterberg-Featherstonehaugh',
				birthDate: '1990-01-01',
				sex: 'female',
			},
		})
		const text = wordsOf(await pagesOf(await renderPdf(compose(visit))))
		expect(text).toContain(t('player.noSize'))
		expect(text).not.toMatch(/undefined|NaN/)
	})
	it('leads with what must not wait', async () => {
		const visit = read({ ...json('visit-adult.json'), screening: { breathlessOrChestPain: true } })
		const document = compose(visit)
		expect(document.blocks[0]).toMatchObject({
			kind: 'alert',
			large: true,
			title: 'STOP FOOTBALL TODAY.',
		})
	})
})
