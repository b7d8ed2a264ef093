import { describe, expect, test } from 'vitest'
import { settledAsProposed } from '../../electron/command/demo/visits.ts'
import type { DraftContent, SignedVisit } from '../../shared/contract.ts'
import { assess } from '../../shared/engine/assess.ts'
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
			decisions: settledAsProposed(assessment, plain.decisions),
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
	test('while a question, a raise or words of the clinician stand undecided', async () => {
		const { app, playerId } = await withPlayer()
		const { draftId, content } = await saved(app, playerId, {
			open: true,
			visit: {
				feet: { stance: 'seated', left: { heelToToeMm: 246 }, right: { heelToToeMm: 248 } },
				ankles: { left: { endFeel: 'front-pinch' } },
			},
		})
		const assessment = assess(content.visit)
		const asked = assessment.prescription.questions.map(({ id }) => id)
		expect(asked).toEqual(expect.arrayContaining(['gate', 'size']))
		const { answers = [] } = settledAsProposed(assessment)
		const put = (decisions: Partial<DraftContent['decisions']>) =>
			app.ask('drafts.save', {
				draftId,
				content: { ...content, decisions: { ...content.decisions, ...decisions } },
			})
		const blocks = async () => (await app.refused('visits.sign', { draftId })).problems
		const open = (questions: string[]) => ({
			path: 'decisions.answers',
			message: state('signing.open-questions', { questions }).says,
		})
		expect(await blocks()).toContainEqual(open(asked))
		await put({ answers: answers.filter(({ question }) => question !== 'size') })
		expect(await blocks()).toEqual([open(['size'])])
		// an answer to another proposal is none
		await put({
			answers: answers.map((answer) =>
				answer.question === 'size' ? { ...answer, of: 'f'.repeat(64) } : answer,
			),
		})
		expect(await blocks()).toEqual([open(['size'])])
		// own lines and changes say something
		await put({
			answers,
			lines: [
				{ findingId: 'sizing.seated.none', choice: 'change', says: ' ' },
				{ findingId: 'own.1', choice: 'add' },
			],
		})
		expect((await blocks())?.map((block) => block.message)).toEqual([
			state('signing.changed-without-words', { finding: 'sizing.seated.none' }).says,
			state('signing.own-line-empty', { line: '1' }).says,
		])
		await put({ answers, heelRaiseMm: { left: 11, right: 11 } })
		expect(await blocks()).toEqual([
			{
				path: 'decisions.heelRaiseWhy',
				message: state('signing.raise-without-reason', { limitMm: 10 }).says,
			},
		])
		expect(app.drawn.count).toBe(0)
		await put({
			answers,
			heelRaiseMm: { left: 11, right: 11 },
			heelRaiseWhy: 'long tried, no complaint',
		})
		await app.ask('visits.sign', { draftId })
		app.close()
	})
	test('while a finding reads otherwise than when it was changed or dropped', async () => {
		const { app, playerId } = await withPlayer()
		const feet = (left: number): Visit['feet'] => ({
			left: { heelToToeMm: left },
			right: { heelToToeMm: 256 },
		})
		const { draftId, content } = await saved(app, playerId, { visit: { feet: feet(246) } })
		const put = (left: number, lines: DraftContent['decisions']['lines']) => {
			const visit = { ...content.visit, feet: feet(left) }
			const decisions = settledAsProposed(assess(visit), { ...content.decisions, lines })
			return app.ask('drafts.save', { draftId, content: { ...content, visit, decisions } })
		}
		const difference = assess(content.visit).findings.find(
			({ id }) => id === 'sizing.side-difference.both',
		)!
		expect(difference.says).toContain('10 mm longer')
		const { says: about, id: findingId } = difference
		for (const line of [
			{ findingId, choice: 'drop', about } as const,
			{
				findingId,
				choice: 'change',
				says: 'Right 10 mm longer: two pairs of one model.',
				about,
			} as const,
		]) {
			await put(247, [line])
			expect((await app.refused('visits.sign', { draftId })).problems).toEqual([
				{
					path: 'decisions.lines',
					message: state('signing.overtaken-notes', { findings: 1 }).says,
				},
			])
		}
		// what was accepted is printed as it reads now
		await put(247, [{ findingId, choice: 'accept', about }])
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
