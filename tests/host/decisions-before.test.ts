/**
 * Decisions written before contents were kept, which know only the words that they were about: in
 * a draft, in a signed visit, and in an amendment of one.
 */
import { describe, expect, test } from 'vitest'
import type { DraftContent, SignedVisit } from '../../shared/contract.ts'
import { assess } from '../../shared/engine/assess.ts'
import type { Assessment } from '../../shared/engine/findings/assessment.ts'
import { aboutOf, type Decision, type Decisions } from '../../shared/engine/visit/decisions.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { state } from '../../shared/engine/words/statement.ts'
import { agreed } from '../agreed.ts'
import { draftOf, saved, withPlayer } from './counting-app.ts'

/** A painful flat foot on a thick shell, a stiff ankle, and feet measured seated. */
const visit: Partial<Visit> = {
	feet: { stance: 'seated', left: { heelToToeMm: 246 }, right: { heelToToeMm: 248 } },
	ankles: { left: { endFeel: 'front-pinch', lungeDeg: 30 } },
	posture: { left: { fpi6: [2, 2, 2, 1, 1, 0] } },
	conditions: [{ condition: 'flexible-flatfoot-pain', side: 'left', status: 'current' }],
	body: { massKg: 70 },
}
/** Every caution and stop as accepted line by line, the way it was done before there were questions. */
const acceptedLines = ({ findings }: Assessment): Decision[] =>
	findings
		.filter(({ level }) => level === 'caution' || level === 'stop')
		.map((finding) => ({ findingId: finding.id, choice: 'accept', ...aboutOf(finding) }))
/** A line as versions before wrote it: the words, no content. */
const before = ({ of: _of, ...line }: Decision): Decision => line
/** As an earlier version worded it. */
const otherWords = (line: Decision): Decision => ({
	...before(line),
	about: `${line.about} (once)`,
})
const typed = { choice: 'change', says: 'Typed once.', why: 'asked for' } as const

type Host = Awaited<ReturnType<typeof withPlayer>>['app']
const problems = async (app: Host, draftId: string) =>
	(await app.refused('visits.sign', { draftId })).problems
const put = (app: Host, draftId: string, content: DraftContent, decisions: Partial<Decisions>) =>
	app.ask('drafts.save', {
		draftId,
		content: { ...content, decisions: { ...content.decisions, ...decisions } },
	})

describe('a draft of before', () => {
	test('stands where the words are the same, and is signed', async () => {
		const { app, playerId } = await withPlayer()
		const { draftId, content } = await saved(app, playerId, { visit })
		await put(app, draftId, content, { lines: acceptedLines(assess(content.visit)).map(before) })
		const { visitId } = await app.ask<{ visitId: string }>('visits.sign', { draftId })
		const signed = await app.ask<SignedVisit>('visits.open', { visitId })
		expect(signed.decisions.lines.every(({ of }) => of === undefined)).toBe(true)
		app.close()
	})
	test('is asked again where the words are others, and keeps what was typed', async () => {
		const { app, playerId } = await withPlayer()
		const { draftId, content } = await saved(app, playerId, { visit })
		const cautions = acceptedLines(assess(content.visit))
		const [first, ...others] = cautions.map(otherWords)
		const lines = [{ ...first!, ...typed }, ...others]
		await put(app, draftId, content, { lines })
		expect(await problems(app, draftId)).toEqual([
			{
				path: 'decisions.lines',
				message: state('signing.overtaken-notes', { findings: 1 }).says,
			},
		])
		expect((await draftOf(app, playerId)).draft.content.decisions.lines).toEqual(lines)
		// decided again, by any of its words
		const again = [{ ...cautions[0]!, ...typed }, ...cautions.slice(1)]
		await put(app, draftId, content, { lines: again })
		await app.ask('visits.sign', { draftId })
		app.close()
	})
	test('stands where a line tells neither words nor content, as it did', async () => {
		const { app, playerId } = await withPlayer()
		const { draftId, content } = await saved(app, playerId, { visit })
		const lines = acceptedLines(assess(content.visit)).map(({ findingId, choice }) => ({
			findingId,
			choice,
		}))
		await put(app, draftId, content, {
			lines,
			insert: {
				left: [{ element: 'rearfoot-post-medial', choice: 'change', value: 2, why: 'knee' }],
			},
		})
		await app.ask('visits.sign', { draftId })
		app.close()
	})
	test('accepted notes are never asked again; changed and dropped ones are', async () => {
		const { app, playerId } = await withPlayer()
		const { draftId, content } = await saved(app, playerId, { visit })
		const assessment = assess(content.visit)
		const advice = assessment.findings.find(({ level }) => level === 'advise')!
		const line = { findingId: advice.id, about: 'Worded otherwise once.' }
		const cautions = acceptedLines(assessment)
		for (const choice of ['change', 'drop'] as const) {
			const own = choice === 'change' ? { says: 'Typed once.' } : {}
			await put(app, draftId, content, { lines: [...cautions, { ...line, choice, ...own }] })
			expect(await problems(app, draftId)).toEqual([
				{
					path: 'decisions.lines',
					message: state('signing.overtaken-notes', { findings: 1 }).says,
				},
			])
		}
		await put(app, draftId, content, { lines: [...cautions, { ...line, choice: 'accept' }] })
		await app.ask('visits.sign', { draftId })
		app.close()
	})
})
describe('a visit signed before', () => {
	test('stays as it is; its amendment asks again and keeps what was typed', async () => {
		const { app, playerId } = await withPlayer()
		const { draftId, content } = await saved(app, playerId, { visit })
		const [first, ...others] = acceptedLines(assess(content.visit)).map(before)
		const lines = [{ ...first!, ...typed }, ...others]
		await put(app, draftId, content, { lines })
		const { visitId } = await app.ask<{ visitId: string }>('visits.sign', { draftId })
		const signed = await app.ask<SignedVisit>('visits.open', { visitId })
		expect(signed.decisions.lines).toEqual(lines)
		await app.ask('visits.amend', { visitId, reason: 'read off the wrong line' })
		const { draft } = await draftOf(app, playerId)
		expect(draft.content.decisions.lines).toEqual(lines)
		const amended = {
			...draft.content,
			decisions: { ...draft.content.decisions, ...agreed },
		}
		// the same words stand; what was changed about others is asked, and what was accepted is not
		const [changed, ...accepted] = lines.map(otherWords)
		await put(app, draft.draftId, amended, { lines: [changed!, ...accepted] })
		expect(await problems(app, draft.draftId)).toEqual([
			{
				path: 'decisions.lines',
				message: state('signing.overtaken-notes', { findings: 1 }).says,
			},
		])
		expect(await app.ask<SignedVisit>('visits.open', { visitId })).toEqual(signed)
		app.close()
	})
})
