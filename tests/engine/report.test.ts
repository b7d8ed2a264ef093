/** Documents as data: what stands after the decisions, and what each kind says. */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { standingLines } from '../../shared/engine/report/decided.ts'
import { isoWeek } from '../../shared/engine/report/iso-week.ts'
import { kinds } from '../../shared/engine/report/kinds.ts'
import {
	modelWords,
	overtakenMarks,
	workKey,
	workWords,
} from '../../shared/engine/report/marked.ts'
import { seasonChart } from '../../shared/engine/report/season-chart.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import { shelfSchema } from '../../shared/engine/visit/shelf.ts'
import { rounded } from '../../shared/engine/visit/sides.ts'
import { sentences } from '../../shared/engine/words/en/documents.table.ts'
import { clinic, json, read } from '../demo.ts'
import { demoNames, reportOf } from './demo-report.ts'

const on = '2027-03-01'

describe('decisions', () => {
	const visit = read(json('visit-adult.json'))
	const assessment = assess(visit)
	it(
		'stand while the finding reads as it did, and fall when it reads otherwise; a line without ' +
			'what it was about stands',
		() => {
			const { id, says } = assessment.findings.find((finding) => finding.level === 'advise')!
			const printed = (line: Decisions['lines'][number]) =>
				standingLines(assessment, { ...noDecisions, lines: [line] }).find(
					(standing) => standing.id === id,
				)?.says
			expect(printed({ findingId: id, choice: 'drop', about: says })).toBeUndefined()
			expect(printed({ findingId: id, choice: 'drop' })).toBeUndefined()
			expect(printed({ findingId: id, choice: 'drop', about: 'It read otherwise.' })).toBe(says)
			expect(printed({ findingId: id, choice: 'change', says: 'My words.', about: says })).toBe(
				'My words.',
			)
			expect(
				printed({
					findingId: id,
					choice: 'change',
					says: 'My words.',
					about: 'It read otherwise.',
				}),
			).toBe(says)
		},
	)
	it('to try a model or change a boot are asked again where size or words are others now', () => {
		const matched = assess(
			read(json('visit-adolescent.json')),
			[],
			undefined,
			shelfSchema.parse(json('shelf.json')),
		)
		const model = matched.footwear.ranked.find(({ verdict }) => verdict !== 'unsuitable')!
		const work = [...(matched.footwear.modifications ?? []), ...(matched.footwear.lacing ?? [])][0]!
		const marks = (modelSays: string, workSays: string) =>
			overtakenMarks(
				{
					...noDecisions,
					lines: [
						{ findingId: `model.${model.id}`, choice: 'accept', says: modelSays },
						{ findingId: `work.${workKey(work)}`, choice: 'accept', says: workSays },
						{ findingId: 'model.gone', choice: 'accept', says: 'A model that is proposed no more' },
					],
				},
				matched,
			).map((mark) => mark.says)
		expect(marks(modelWords(model), workWords(work))).toEqual([])
		expect(marks(`${model.name}, size 1 UK`, 'Other words')).toEqual([
			`${model.name}, size 1 UK`,
			'Other words',
		])
	})
})

describe('every kind', () => {
	it('says what it lacks', () => {
		const visit = read(json(demoNames[1]!))
		const input = {
			visit,
			assessment: assess(visit),
			decisions: noDecisions,
			clinic,
			signedAt: undefined,
			draft: true,
			on,
		}
		expect(kinds['season-chart'].problems(input)).toEqual([
			expect.stringMatching(/^season: no sessions/),
		])
		expect(kinds.guardian.problems(input)).toEqual([
			expect.stringMatching(/^player\.guardian: missing/),
		])
		expect(kinds.referral.problems(input)).toEqual([
			expect.stringMatching(/^referral: no reason for a letter/),
		])
		expect(kinds.coach.problems(input)).toEqual([expect.stringMatching(/^consent: missing/)])
		expect(kinds.squad.problems({ ...input, audience: 'club' })).toHaveLength(1)
	})
	it('puts urgency and request in the first line of a referral', () => {
		const visit = read({ ...json(demoNames[1]!), screening: { breathlessOrChestPain: true } })
		const letter = kinds.referral.compose({
			visit,
			assessment: assess(visit),
			decisions: noDecisions,
			clinic,
			signedAt: undefined,
			draft: true,
			on,
		})
		expect(letter.blocks[0]).toEqual({
			kind: 'text',
			tone: 'lead',
			text: 'Urgency: emergency, now. Request: emergency assessment.',
		})
	})
	it('tells a child no stage, share or speed of growth, and that what may come is a guess', () => {
		const young = read(json('visit-adolescent.json'))
		const { growth } = assess(young)
		const report = reportOf(young)
		const told = textsIn(report.blocks).join(' ')
		expect(told.split(sentences['player.growthCautions'])).toHaveLength(2)
		for (const figure of [
			growth!.percentAdultStature!,
			growth!.predictedAdultStatureCm!,
			...Object.values(growth!.maturityOffsetYears),
			young.body!.massKg!,
		])
			expect(told).not.toContain(String(rounded(figure, 1)))
		expect(textsIn(reportOf(read(json('visit-adult.json')))).join(' ')).not.toContain(
			sentences['player.growthCautions'],
		)
	})
	it('says that it was amended and lists what changed', () => {
		const visit = read(json(demoNames[0]!))
		const document = reportOf(visit, noDecisions, {
			draft: false,
			signedAt: '2027-01-21T09:00:00.000Z',
			version: 2,
			changes: ['heel raise 4 mm instead of 6 mm'],
		})
		const next = document.blocks.findIndex(({ kind, ...block }) => 'notOnPageOne' in block)
		expect(JSON.stringify(document.blocks.slice(0, next))).toContain(
			'This takes the place of version 1.',
		)
		expect(document.blocks.slice(next)).toContainEqual({
			kind: 'alert',
			title: sentences['amended.title'],
			text: 'It takes the place of version 1. What changed: heel raise 4 mm instead of 6 mm.',
		})
		expect(document.subject).toContainEqual(['Status', 'Amended, version 2'])
	})
	it('leaves out what a competent minor asked not to show the guardian', () => {
		const visit = read(json(demoNames[0]!))
		const assessment = assess(visit)
		const planned = assessment.prescription.raise.pairs.find(({ left }) => left.addMm > 0)
		const input = {
			visit,
			assessment,
			decisions: noDecisions,
			clinic,
			signedAt: undefined,
			draft: true,
			on,
		}
		const raised = `${planned!.left.addMm} mm in both shoes`
		expect(JSON.stringify(kinds.guardian.compose(input))).toContain(raised)
		expect(
			JSON.stringify(kinds.guardian.compose({ ...input, withheld: ['insert'] })),
		).not.toContain(raised)
	})
	it('names rules in plain words in the notes, each with a capital', () => {
		for (const name of demoNames)
			for (const note of reportOf(read(json(name))).notes) {
				expect(note).toMatch(/^[A-Z0-9]/)
				expect(note).not.toMatch(/\b[a-z]+\.[a-z]+[A-Z]\w*/)
			}
	})
})

describe('the season chart', () => {
	it.each([
		['2027-01-01', 53, '2026-12-28'],
		['2026-12-31', 53, '2026-12-28'],
		['2027-01-04', 1, '2027-01-04'],
		['2024-12-30', 1, '2024-12-30'],
		['2021-01-03', 53, '2020-12-28'],
	])('%s lies in ISO week %i', (date, week, monday) =>
		expect(isoWeek(date)).toEqual({ week, monday }),
	)
	it('gives each pair a letter and a pattern of its own, and holds no clinical word', () => {
		const visit = read(json(demoNames[0]!))
		const plan = {
			sessions: [
				{
					date: '2027-02-02',
					start: '18:00',
					kind: 'training' as const,
					surface: 'hall',
					pair: 'p1',
				},
				{ date: '2027-02-06', kind: 'match' as const, surface: 'hall', pair: 'p2' },
				{ date: '2027-02-20', kind: 'match' as const, surface: 'hall' },
			],
			pairs: [{ id: 'p1', replaceBy: '2027-02-18' }, { id: 'p2' }],
			off: [{ date: '2027-02-10', kind: 'training' as const, status: 'injured' as const }],
		}
		const worn = { insert: true, buying: true } as const
		const input = { visit, clinic, plan, paper: 'A4', draft: false, on } as const
		const chart = seasonChart({ ...worn, ...input })
		const grid = chart.blocks.at(-1)
		if (grid?.kind !== 'chart') throw new Error('the weeks come last')
		expect(grid.rows.map((row) => row[0]?.text)).toEqual(['1 Feb', '8 Feb', '15 Feb'])
		expect(grid.rows[0]?.[2]).toMatchObject({ text: 'A+', pattern: 'plain', beside: '18:00' })
		expect(grid.rows[0]?.[6]).toMatchObject({ text: 'B+', pattern: 'rising', beside: '*' })
		expect(grid.rows[1]?.[3]).toEqual({ text: '', beside: 'off' })
		expect(grid.rows[2]?.[4]?.below).toBe('new A')
		expect(grid.rows[2]?.[6]).toMatchObject({ text: 'none', beside: '*', unusual: true })
		const waiting = JSON.stringify(seasonChart({ ...worn, ...input, buying: false }))
		expect(waiting).not.toContain('new A')
		expect(waiting).not.toContain('replace by')
		expect(JSON.stringify(chart)).not.toMatch(/injur|pain|apophysitis|raise|growth/i)
	})
})
