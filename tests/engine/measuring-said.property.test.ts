/** What the measuring rooms say, over random visits: codes to go by, and each reader's own words. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { chartsOf } from '../../shared/engine/charts/charts.ts'
import type { Finding } from '../../shared/engine/findings/finding.ts'
import { countsOf, fleschKincaid } from '../../shared/engine/report/readability.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import {
	privateTopicOf,
	type Statement,
	spokenTo,
	state,
} from '../../shared/engine/words/statement.ts'
import { wholeVisit } from './random-visit.ts'

const measuring = ['sizing', 'ankle', 'posture', 'growth', 'loading'] as const
const twoVisits = fc
	.tuple(wholeVisit, wholeVisit)
	.map(([visit, other]): [Visit, Visit] => [
		visit,
		{ ...other, player: visit.player, visitDate: '2026-03-02' },
	])
function saidOf([visit, then]: [Visit, Visit]): { findings: Finding[]; charts: Statement[] } {
	const assessment = assess(visit, [then])
	return {
		findings: measuring.flatMap((room) => assessment[room]?.findings ?? []),
		charts: measuring
			.flatMap((topic) => chartsOf(topic, visit, [then], assessment))
			.flatMap(({ told = [], latest = [] }) => [...told, ...latest]),
	}
}
it('each finding has a code of its room and parameters that a file can keep', () => {
	fc.assert(
		fc.property(twoVisits, (visits) => {
			for (const { id, code, params, topic, says, side } of saidOf(visits).findings) {
				expect(code?.split('.')[0], id).toBe(topic)
				expect(JSON.parse(JSON.stringify(params)), id).toEqual(params)
				expect(says, id).not.toMatch(/undefined|NaN|\[object|^$/)
				if (side !== 'none' && topic !== 'growth' && topic !== 'loading')
					expect(id.split('.').at(-1)).toBe(side)
			}
		}),
		{ numRuns: 40 },
	)
})
/** What player and guardian read; a pair is called as the player calls it. */
function toldToPlayer(statement: Pick<Finding, 'says' | 'code' | 'params'>): string[] {
	const pairs = Object.fromEntries(
		Object.keys(statement.params ?? {})
			.filter((name) => ['pair', 'from', 'to'].includes(name))
			.map((name) => [name, 'boots']),
	)
	const named = { ...statement, params: { ...statement.params, ...pairs } }
	return [spokenTo('player', named), spokenTo('guardian', named)].filter(
		(words) => words !== undefined,
	)
}
// school grade 7 at most (Flesch-Kincaid, see readability.ts); sentences of 15 words at most
it('a player is told it in short and plain sentences, without the trade', () => {
	const trade =
		/pronat|supinat|newton|\bz\b|centile|offset|MTP|scheme|maturity|index|cut-off|dorsiflex|ray\b/i
	const told = new Set<string>()
	fc.assert(
		fc.property(twoVisits, (visits) => {
			const { findings, charts } = saidOf(visits)
			for (const statement of [...findings, ...charts])
				for (const words of toldToPlayer(statement)) {
					expect(words).not.toMatch(trade)
					told.add(words.replaceAll(/\d+(\.\d+)?/g, '5'))
				}
		}),
	)
	const texts = [...told]
	expect(texts.length).toBeGreaterThan(40)
	const readings = /^Your (left|right) (foot|ankle): |^Your height: /
	for (const text of texts.filter((text) => !readings.test(text)))
		for (const sentence of text.split(/(?<=[.!?]) /))
			expect(sentence.split(' ').length, sentence).toBeLessThanOrEqual(15)
	expect(fleschKincaid(countsOf(texts.join(' '))!)).toBeLessThanOrEqual(7)
})
it('weight reaches nobody but the clinician; estimates and forces neither', () => {
	const readers = ['player', 'guardian', 'doctor', 'laboratory', 'coach'] as const
	const force = state('loading.force', { lowN: 900, highN: 1400 })
	const bodyMass = state('chart.mass', { sex: 'male', points: [] })
	for (const statement of [force, state('growth.centiles'), bodyMass])
		expect(privateTopicOf(statement)).toBe('weight')
	const estimates = [
		state('growth.stage', { stage: 'around', byPercent: true }),
		state('growth.adult-stature', {
			predictedCm: 180,
			errorCm: 5,
			held: false,
			parents: 'measured',
		}),
		state('posture.fpi', { side: 'left', fpi: 7, band: 'pronated', scheme: 'raw' }),
	]
	for (const statement of [force, bodyMass, ...estimates])
		for (const reader of readers) expect(spokenTo(reader, statement, ['weight'])).toBeUndefined()
})
