/** The season through the host's calls: given out, stopped, and read from lists. */
import { describe, expect, test } from 'vitest'
import type { OutputOf } from '../../shared/contract.ts'
import { assess } from '../../shared/engine/assess.ts'
import { applyImport } from '../../shared/engine/season/preview.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { opened, pictured, season } from './season-bench.ts'

describe('giving out', () => {
	test('chart, pocket table and calendar; none once the sessions or pairs changed', async () => {
		const bench = await opened()
		await bench.save(season)
		expect(
			(await bench.refused('season.chart', { playerId: bench.playerId, paper: 'A4' })).code,
		).toBe('season.not-planned')
		await bench.plan()
		for (const paper of ['A4', 'A3', 'pocket'])
			await bench.ask('season.chart', { playerId: bench.playerId, paper })
		expect(bench.drawn.map((each) => [each.kind, each.paper ?? 'A4'])).toEqual([
			['season-chart', 'A4'],
			['season-chart', 'A3'],
			['season-pocket', 'A4'],
		])
		const words = JSON.stringify(bench.drawn.map((each) => each.blocks))
		expect(words).not.toMatch(/apophysitis|stress|injur|heel/i)
		const first = await bench.ask<{ text: string }>('season.ics', { playerId: bench.playerId })
		bench.clock.ms += 60_000
		const second = await bench.ask<{ text: string }>('season.ics', { playerId: bench.playerId })
		const uids = (text: string) => text.match(/^UID:.*$/gm)
		const ahead = (await bench.open()).planned?.plan.sessions.filter(({ past }) => !past)
		expect(new Set(uids(first.text)).size).toBe(ahead?.length)
		expect(first.text.match(/^BEGIN:VEVENT\r?$/gm)).toHaveLength(ahead?.length ?? 0)
		expect(uids(second.text)).toEqual(uids(first.text))
		expect(second.text).not.toMatch(/SEQUENCE:1/)
		await bench.put({ footwear: pictured.footwear!.slice(0, 2) })
		expect((await bench.open()).planned?.basisChanged).toBe(true)
		expect(
			(await bench.refused('season.chart', { playerId: bench.playerId, paper: 'A4' })).code,
		).toBe('season.plan-is-old')
		expect((await bench.refused('season.ics', { playerId: bench.playerId })).code).toBe(
			'season.plan-is-old',
		)
		bench.app.close()
	})
	test('a warning sign holds the rotation until its outcome is recorded; an act lifts nothing', async () => {
		const screening = {
			boneStress: {
				side: 'right' as const,
				site: 'navicular' as const,
				focalTenderness: true,
				loadPain: true,
			},
		}
		const bench = await opened({ screening })
		await bench.save(season)
		const { blocked } = await bench.open()
		expect(blocked?.code).toBe('season.held')
		expect(await bench.refused('season.plan', { playerId: bench.playerId })).toMatchObject({
			code: 'season.blocked',
			message: blocked?.says,
		})
		const { draft } = await bench.ask<OutputOf<'drafts.open'>>('drafts.open', {
			playerId: bench.playerId,
			visitDate: pictured.visitDate,
		})
		const { gate } = assess(draft.content.visit as Visit).prescription
		const items = assess(draft.content.visit as Visit).screening.blockedBy.right
		await bench.ask('drafts.save', {
			draftId: draft.draftId,
			content: {
				...draft.content,
				decisions: {
					...draft.content.decisions,
					screeningDone: [{ side: 'right', items, done: 'Letter written.', on: '2027-01-25' }],
				},
			},
		})
		expect((await bench.open()).blocked?.code).toBe('season.held')
		const holds = [...gate.person.holds, ...gate.right.holds]
		await bench.put({
			outcomes: [...new Set(holds.map(({ rule }) => rule))].map((rule) => ({
				rule,
				side: 'right' as const,
				result: 'excluded' as const,
				found: 'Scan clear.',
				how: 'Magnetic resonance scan',
				by: 'A. Example',
				on: pictured.visitDate,
				treatingDoctorClears: true,
				lifts: [...new Set(holds.map(({ what }) => what))],
			})),
		})
		expect((await bench.open()).blocked).toBeUndefined()
		expect((await bench.plan()).plan.sessions.length).toBeGreaterThan(40)
		bench.app.close()
	})
	test.each(['previous-foot-ulcer', 'navicular-stress-fracture'] as const)(
		'%s: nothing is planned, and the gate says what ends it',
		async (condition) => {
			const bench = await opened({
				conditions: [{ condition, side: 'left', status: 'current' }],
			})
			await bench.save(season)
			expect((await bench.refused('season.plan', { playerId: bench.playerId })).code).toBe(
				'season.blocked',
			)
			expect((await bench.open()).blocked?.code).toBe('season.held')
			bench.app.close()
		},
	)
	test('without pairs or sessions it says what to enter', async () => {
		const bench = await opened({ footwear: [] })
		expect((await bench.refused('season.plan', { playerId: bench.playerId })).code).toBe(
			'season.no-pair',
		)
		await bench.put({ footwear: pictured.footwear })
		expect((await bench.refused('season.plan', { playerId: bench.playerId })).code).toBe(
			'season.empty',
		)
		bench.app.close()
	})
})
describe('importing', () => {
	const csv =
		'Date;Time;Opponent;Surface\r\n03/04/2027;14:00;Harbour (match);natural ' +
		'firm\r\n05/05/2027;TBA;Northfield (match);3G at the school\r\n'
	test('asks what can be read two ways; a second reading adds nothing', async () => {
		const bench = await opened()
		await bench.save(season)
		const ask = (answers: Record<string, string>) =>
			bench.ask<OutputOf<'season.previewImport'>>('season.previewImport', {
				playerId: bench.playerId,
				text: csv,
				kind: 'csv',
				answers: { source: 'cup', ...answers },
			})
		const first = await ask({})
		expect(first.questions.map((each) => each.key)).toEqual(['dateOrder'])
		expect(first.add).toEqual([])
		const second = await ask({ dateOrder: 'day-month' })
		expect(second.questions.map((each) => each.key)).toEqual(['surfaces.3G at the school'])
		const third = await ask({
			dateOrder: 'day-month',
			'surfaces.3G at the school': 'artificial-3g',
		})
		expect(third.add.map((each) => [each.date, each.surface, each.source])).toEqual([
			['2027-04-03', 'natural-firm', 'cup'],
			['2027-05-05', 'artificial-3g', 'cup'],
		])
		expect((await bench.open()).season).toEqual(season)
		await bench.save({ ...season, sessions: applyImport(season.sessions ?? [], third) })
		const again = await ask({
			dateOrder: 'day-month',
			'surfaces.3G at the school': 'artificial-3g',
		})
		expect([again.add, again.change, again.remove, again.same]).toEqual([[], [], [], 2])
		expect(
			(
				await bench.refused('season.previewImport', {
					playerId: bench.playerId,
					text: csv,
					kind: 'csv',
					answers: { dateOrder: 'sideways' },
				})
			).problems,
		).toMatchObject([{ path: 'answers.dateOrder', code: 'season.answer-none-of' }])
		bench.app.close()
	})
	test('without first and last day it asks for them', async () => {
		const bench = await opened()
		expect(
			(
				await bench.refused('season.previewImport', {
					playerId: bench.playerId,
					text: csv,
					kind: 'csv',
					answers: {},
				})
			).code,
		).toBe('season.without-days')
		bench.app.close()
	})
})
