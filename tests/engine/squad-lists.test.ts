/** Lists of players: who is stopped is not overlooked, counts are true, and the club reads its own. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { settledAsProposed } from '../../electron/command/demo/visits.ts'
import { assess } from '../../shared/engine/assess.ts'
import { isHeld } from '../../shared/engine/facts/held.ts'
import { settledPlan } from '../../shared/engine/prescription/settled.ts'
import type { ClubConsent } from '../../shared/engine/report/club.ts'
import type { BlockOf, LwDocument } from '../../shared/engine/report/document.ts'
import { type KindInput, kindNames, kinds } from '../../shared/engine/report/kinds.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { speakFrom } from '../../shared/engine/words/speak.ts'
import { dateWords } from '../../shared/engine/words/words.ts'
import { clinic, json, read } from '../demo.ts'
import { demoNames } from './demo-report.ts'

const t = speakFrom()
const on = '2027-03-01'
const pictured = (name: string): Visit =>
	visitSchema.parse(
		JSON.parse(readFileSync(new URL(`./pictures/${name}.json`, import.meta.url), 'utf8')),
	)
const raw = json(demoNames[0]!)
const tui = read(raw)
const called = (familyName: string, more: object = {}): Visit =>
	read({ ...raw, ...more, player: { ...raw.player, familyName } })
const memberOf = (visit: Visit, isSettled = true) => {
	const assessment = assess(visit)
	return { visit, assessment, decisions: isSettled ? settledAsProposed(assessment) : noDecisions }
}
const listOf = (visits: readonly Visit[], more: Partial<KindInput> = {}): LwDocument => {
	const [first, ...members] = visits.map((visit) => memberOf(visit))
	return kinds.squad.compose({
		...first!,
		members,
		clinic,
		signedAt: '2027-03-01T09:00:00.000Z',
		draft: false,
		on,
		...more,
	})
}
const boxes = ({ blocks }: LwDocument) =>
	blocks.flatMap((block) => (block.kind === 'alert' ? [block.title] : []))
const tables = ({ blocks }: LwDocument): BlockOf<'table'>[] =>
	blocks.filter((block) => block.kind === 'table')
const column = ({ head, rows }: BlockOf<'table'>, name: string): string[] =>
	rows.map((row) => row[head.indexOf(name)] ?? '')

describe('the list for the clinician', () => {
	const well = called('Abel')
	const emergency = called('Zeal', { screening: { breathlessOrChestPain: true } })
	const suspected = pictured('04-navicular-suspected')
	const limping = pictured('11-limping-child')
	const list = listOf([well, suspected, emergency, limping])
	it('begins with a box for each who is stopped, the most urgent first, and no row besides', () => {
		expect(list.blocks.slice(0, 3).map(({ kind }) => kind)).toEqual(['alert', 'alert', 'alert'])
		expect(boxes(list).map((title) => /Zeal|Oakhurst|Marlow/.exec(title)?.[0])).toEqual([
			'Zeal',
			'Oakhurst',
			'Marlow',
		])
		const names = column(tables(list)[1]!, t('squad.playerBorn'))
		expect(names).toHaveLength(1)
		expect(names[0]).toMatch(/Abel/)
	})
	it('has numbers to the right, in whole millimetres, their unit in the head', () => {
		const table = tables(list)[1]!
		for (const [at, head] of table.head.entries()) {
			const cells = table.rows.map((row) => row[at] ?? '')
			if (!cells.some((cell) => /^\d+$/.test(cell))) continue
			expect(table.align?.[at], head).toBe('right')
			expect(cells.join(' '), head).not.toMatch(/mm|kg/)
		}
		const { boots } = settledPlan(assess(well), noDecisions).size
		const inside = ['squad.insideMin', 'squad.insideMax'] as const
		const [least, most] = inside.map((key) => Number(column(table, t(key))[0]))
		expect(least).toBe(Math.ceil(boots!.min))
		expect(most).toBe(Math.floor(boots!.max))
	})
	it('counts what was settled: no proposal, and no referral that nobody recorded', () => {
		const { decisions, ...undecided } = memberOf(well, false)
		const counted = (document: LwDocument, key: Parameters<typeof t>[0]) =>
			column(tables(document)[0]!, (t as (key: string) => string)(key))[0]
		const open = listOf([well], { ...undecided, decisions })
		const settled = listOf([well])
		for (const key of ['squad.replace', 'squad.insert', 'squad.reviews'] as const) {
			expect(counted(open, key), key).toBe('0')
			expect(counted(settled, key), key).toBe('1')
		}
		expect(counted(listOf([suspected]), 'squad.refer')).toBe('0')
	})
})

describe('what the club is given', () => {
	const consentBy = (by: ClubConsent['by'], purpose: ClubConsent['purpose']): ClubConsent => ({
		id: 'C-4711',
		purpose,
		decision: 'permit',
		given: '2027-01-20',
		...(by && { by }),
	})
	const plan = {
		sessions: Array.from({ length: 85 }, (_, at) => ({
			date: new Date(Date.UTC(2027, 2, 2 + at)).toISOString().slice(0, 10),
			kind: 'training' as const,
			surface: 'hall',
			pair: 'p1',
		})),
		pairs: [{ id: 'p1' }],
	}
	const given = (kind: 'coach' | 'squad', by: ClubConsent['by'], visit: Visit, more = {}) =>
		kinds[kind].compose({
			...memberOf(visit),
			clinic,
			signedAt: '2027-03-01T09:00:00.000Z',
			draft: false,
			on,
			audience: 'club',
			consents: [consentBy(by, kind === 'coach' ? 'coach' : 'squad-club')],
			plan,
			...more,
		})
	it.each(['coach', 'squad'] as const)('says in the %s who agreed, without a number', (kind) => {
		for (const by of ['player', 'parent', 'guardian', 'other-authority'] as const) {
			const text = textsIn(given(kind, by, tui)).join('\n')
			expect(text).toContain(t(`coach.agreed.${by}`, { date: dateWords('2027-01-20') }))
			expect(text).not.toContain('C-4711')
		}
		const unknown = textsIn(given(kind, undefined, tui)).join('\n')
		expect(unknown).toContain(t('coach.agreed', { date: dateWords('2027-01-20') }))
	})
	it('says on top what the player may do, then what to wear in the sessions that are planned', () => {
		const letter = given('coach', 'guardian', tui)
		expect(letter.blocks[0]).toMatchObject({ kind: 'text', tone: 'headline' })
		const worn = tables(letter).find(({ caption }) => caption === t('coach.wearCaption'))
		expect(worn?.rows[0]?.[0]).toContain('Tuesday')
		expect(textsIn(letter)).toContain(t('coach.more', { count: 18, total: 85 }))
		const after = given('coach', 'guardian', tui, { on: '2027-12-30' })
		expect(textsIn(after)).toContain(t('coach.over', { total: 85 }))
		const stopped = given(
			'coach',
			'guardian',
			called('Zeal', { screening: { breathlessOrChestPain: true } }),
		)
		expect(stopped.blocks[0]).toMatchObject({ kind: 'alert', title: t('coach.noSport') })
		expect(tables(stopped)).toEqual([])
	})
	it('has the day of the review that the guardian’s page has', () => {
		for (const visit of [tui, pictured('11-limping-child'), pictured('13-child-of-five')]) {
			const input = {
				...memberOf(visit),
				clinic,
				signedAt: `${on}T09:00:00.000Z`,
				draft: false,
				on,
			}
			const { review } = settledPlan(input.assessment, input.decisions)
			const day = dateWords(review!.date)
			for (const page of [
				kinds.guardian.compose(input),
				given('coach', 'guardian', visit),
				given('squad', 'guardian', visit),
			])
				expect(textsIn(page).join('\n'), page.kind).toContain(day)
		}
	})
	it('is told of no insert that waits', () => {
		const sore = pictured('10-diabetic-foot')
		const both = { ...sore, screening: { ...sore.screening, rigidFlatFoot: true } }
		const { gate } = assess(both).prescription
		expect(isHeld(gate, 'insert', 'left') && isHeld(gate, 'insert', 'right')).toBe(true)
		const facts = given('coach', 'player', both).blocks.find((block) => block.kind === 'facts')
		expect(facts?.kind === 'facts' && facts.rows).toContainEqual({
			label: t('coach.insert'),
			text: t('common.no'),
		})
	})
})

const everyPaper = [
	...kindNames.map((kind) => ({ kind, purpose: 'coach' as const, audience: 'clinician' as const })),
	{ kind: 'squad' as const, purpose: 'squad-club' as const, audience: 'club' as const },
]
it.each(everyPaper)('$kind for the $audience is marked until somebody signed', (paper) => {
	const { kind, purpose, audience } = paper
	for (const draft of [true, false]) {
		const document = kinds[kind].compose({
			...memberOf(tui),
			clinic,
			signedAt: draft ? undefined : `${on}T09:00:00.000Z`,
			draft,
			on,
			audience,
			consents: [{ id: 'C', purpose, decision: 'permit', given: '2027-01-20' }],
		})
		expect(document.draft).toBe(draft)
	}
})
