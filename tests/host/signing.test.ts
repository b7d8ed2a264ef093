import { describe, expect, test } from 'vitest'
import { acceptedLines } from '../../electron/command/demo.ts'
import type { DraftContent, SignedVisit } from '../../shared/contract.ts'
import { assess } from '../../shared/engine/assess.ts'
import { aboutOf } from '../../shared/engine/visit/decisions.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { state } from '../../shared/engine/words/statement.ts'
import { draftOf, folder, saved, withPlayer } from './counting-app.ts'

describe('signing is refused', () => {
	test('while a field holds text that is not a value', async () => {
		const { app, playerId } = await withPlayer()
		const { draftId } = await saved(app, playerId, { raw: { 'feet.left.heelToToeMm': '24x' } })
		const { code, problems } = await app.refused('visits.sign', { draftId })
		expect(code).toBe('visits.not-yet-values')
		expect(problems).toEqual([
			{ path: 'feet.left.heelToToeMm', message: expect.stringContaining('24x') },
		])
		expect(app.drawn.count).toBe(0)
		expect((await draftOf(app, playerId)).draft.draftId).toBe(draftId)
		app.close()
	})
	test('on a same-day action until Decide says what was done', async () => {
		const { app, playerId } = await withPlayer()
		const screening: Visit['screening'] = {
			lisfrancSuspected: true,
			injury: { side: 'left', unableToBearWeightNow: true },
		}
		const { draftId, content: plain } = await saved(app, playerId, { visit: { screening } })
		const assessment = assess(plain.visit)
		expect(assessment.screening.action).toBe('same-day')
		const content = {
			...plain,
			decisions: { ...plain.decisions, lines: acceptedLines(assessment) },
		}
		for (const referralDone of [undefined, '   ']) {
			await app.ask('drafts.save', {
				draftId,
				content: { ...content, decisions: { ...content.decisions, referralDone } },
			})
			expect((await app.refused('visits.sign', { draftId })).problems).toEqual([
				expect.objectContaining({ path: 'decisions.referralDone' }),
			])
		}
		expect(app.drawn.count).toBe(0)
		await app.ask('drafts.save', {
			draftId,
			content: {
				...content,
				decisions: {
					...content.decisions,
					referralDone: 'Sent to the emergency department at 09:10.',
				},
			},
		})
		await app.ask('visits.sign', { draftId })
		app.close()
	})
	test('while a caution, a raise or words of the clinician stand undecided', async () => {
		const { app, playerId } = await withPlayer()
		const { draftId, content } = await saved(app, playerId, {
			visit: {
				feet: { stance: 'seated', left: { heelToToeMm: 246 }, right: { heelToToeMm: 248 } },
				ankles: { left: { endFeel: 'front-pinch' } },
			},
		})
		const cautions = acceptedLines(assess(content.visit))
		expect(cautions.length).toBeGreaterThan(1)
		const put = (decisions: Partial<DraftContent['decisions']>) =>
			app.ask('drafts.save', {
				draftId,
				content: { ...content, decisions: { ...content.decisions, ...decisions } },
			})
		const blocks = async () => (await app.refused('visits.sign', { draftId })).problems
		expect(await blocks()).toEqual([
			{
				path: 'decisions.lines',
				message: state('signing.undecided', { findings: cautions.length }).says,
			},
		])
		await put({ lines: cautions.slice(1) })
		expect(await blocks()).toEqual([
			{
				path: 'decisions.lines',
				message: state('signing.undecided', { findings: 1 }).says,
			},
		])
		// a change says something else than the engine, and own lines say something
		const [first, ...others] = cautions
		await put({
			lines: [
				{ findingId: first!.findingId, choice: 'change', says: ' ' },
				...others,
				{ findingId: 'own.1', choice: 'add' },
			],
		})
		expect((await blocks())?.map((block) => block.message)).toEqual([
			state('signing.undecided', { findings: 1 }).says,
			state('signing.changed-without-words', { finding: first!.findingId }).says,
			state('signing.own-line-empty', { line: '1' }).says,
		])
		await put({ lines: cautions, heelRaiseMm: { left: 11, right: 11 } })
		expect(await blocks()).toEqual([
			{
				path: 'decisions.heelRaiseWhy',
				message: state('signing.raise-without-reason', { limitMm: 10 }).says,
			},
		])
		expect(app.drawn.count).toBe(0)
		await put({
			lines: cautions,
			heelRaiseMm: { left: 11, right: 11 },
			heelRaiseWhy: 'long tried, no complaint',
		})
		await app.ask('visits.sign', { draftId })
		app.close()
	})
	test('while a finding reads otherwise than when it was decided', async () => {
		const { app, playerId } = await withPlayer()
		// a seated stance is a caution; feet of different length are advice that names the difference
		const { draftId, content } = await saved(app, playerId, {
			visit: {
				feet: { stance: 'seated', left: { heelToToeMm: 246 }, right: { heelToToeMm: 256 } },
			},
		})
		const put = (left: number, lines: DraftContent['decisions']['lines']) =>
			app.ask('drafts.save', {
				draftId,
				content: {
					...content,
					visit: {
						...content.visit,
						feet: { stance: 'seated', left: { heelToToeMm: left }, right: { heelToToeMm: 256 } },
					},
					decisions: { ...content.decisions, lines },
				},
			})
		const at = (id: string) => assess(content.visit).findings.find((finding) => finding.id === id)!
		const seated = acceptedLines(assess(content.visit)),
			difference = at('sizing.side-difference.both')
		expect(difference.says).toContain('10 mm longer')
		const about = difference.says,
			findingId = difference.id
		for (const line of [
			{ findingId, choice: 'drop', about } as const,
			{
				findingId,
				choice: 'change',
				says: 'Right 10 mm longer: two pairs of one model.',
				about,
			} as const,
		]) {
			await put(247, [...seated, line])
			expect((await app.refused('visits.sign', { draftId })).problems).toEqual([
				{
					path: 'decisions.lines',
					message: state('signing.overtaken-notes', { findings: 1 }).says,
				},
			])
		}
		// a caution accepted about something else counts as undecided
		await put(
			247,
			seated.map(({ findingId, choice }) => ({
				findingId,
				choice,
				...aboutOf({
					says: 'The feet were measured lying down.',
					code: 'sizing.lying',
					params: {},
				}),
			})),
		)
		expect((await app.refused('visits.sign', { draftId })).problems?.[0]?.message).toBe(
			state('signing.undecided', { findings: seated.length }).says,
		)
		// advice that was accepted is printed as it reads now; decided again, it stands
		await put(247, [...seated, { findingId, choice: 'accept', about }])
		await app.ask('visits.sign', { draftId })
		app.close()
	})
	test('twice at once: one visit, not two', async () => {
		const { app, playerId } = await withPlayer(folder(), {
			whileDrawing: () => new Promise((resolve) => setTimeout(resolve, 20)),
		})
		const { draftId } = await saved(app, playerId)
		const answers = await Promise.all([
			app.call('visits.sign', { draftId }),
			app.call('visits.sign', { draftId }),
		])
		expect(answers.map((answer) => answer.ok).sort()).toEqual([false, true])
		expect(
			(await app.ask<{ visits: unknown[] }>('players.open', { playerId })).visits,
		).toHaveLength(1)
		app.close()
	})
	test(
		'where an entry was saved while the report was being drawn, and the entry is ' + 'kept',
		async () => {
			let once: (() => Promise<unknown>) | undefined
			const { app, playerId } = await withPlayer(folder(), {
				whileDrawing: async () => {
					const now = once
					once = undefined
					await now?.()
				},
			})
			const { draftId, content } = await saved(app, playerId)
			once = () =>
				app.ask('drafts.save', {
					draftId,
					content: { ...content, visit: { ...content.visit, notes: 'written late' } },
				})
			expect((await app.refused('visits.sign', { draftId })).code).toBe('visits.changed-meanwhile')
			const { visitId } = await app.ask<{ visitId: string }>('visits.sign', { draftId })
			expect((await app.ask<SignedVisit>('visits.open', { visitId })).visit.notes).toBe(
				'written late',
			)
			app.close()
		},
	)
})
