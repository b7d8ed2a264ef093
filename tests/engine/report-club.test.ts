/** What a club may read: nothing without a consent, and nothing but the whitelist. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { settleAll } from '../../shared/engine/prescription/answers.ts'
import {
	type ClubConsent,
	clubFields,
	NoConsent,
	practicalLimits,
} from '../../shared/engine/report/club.ts'
import { coachLetter } from '../../shared/engine/report/coach-letter.ts'
import { toHtml } from '../../shared/engine/report/html.ts'
import { squadForClub } from '../../shared/engine/report/squad-for-club.ts'
import { type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { sentences } from '../../shared/engine/words/en/documents.table.ts'
import { clinic, json, read } from '../demo.ts'
import { demoNames } from './demo-report.ts'

const on = '2027-03-01'
const consent: ClubConsent = {
	id: 'C-7',
	purpose: 'coach',
	decision: 'permit',
	given: '2027-01-20',
	until: '2027-12-31',
}

/** Puts a marker in place of every text and number, and remembers those that no club may read. */
class Marks {
	readonly secrets: string[] = []
	private readonly seed: number
	private count = 0
	constructor(seed: number) {
		this.seed = seed
	}
	/**
	 * Markers of letters and digits in no catalogue word; closed words (enums, dates) are listed
	 * apart.
	 */
	mark(value: unknown, path = ''): unknown {
		if (Array.isArray(value)) return value.map((entry, at) => this.mark(entry, `${path}.${at}`))
		if (value && typeof value === 'object')
			return Object.fromEntries(
				Object.entries(value).map(([key, entry]) => [
					key,
					this.mark(entry, path ? `${path}.${key}` : key),
				]),
			)
		if (typeof value !== 'string' && typeof value !== 'number') return value
		if (/\.(sole|letter)$/.test(path)) return value
		const marker =
			typeof value === 'number'
				? Number(`${this.seed}${++this.count}.77`)
				: `zq${this.seed}x${++this.count}z`
		if (!allowed.has(path)) this.secrets.push(String(marker))
		return marker
	}
	secret(words: string): string {
		const marker = `zq${this.seed}d${words}z`
		this.secrets.push(marker)
		return marker
	}
}
const allowed = new Set(['player.givenName', 'player.familyName', 'player.club'])
/** A visit with more fields filled in than the demo has. */
const fullVisit = (raw: ReturnType<typeof json>) => ({
	...raw,
	notes: 'a',
	player: {
		...raw.player,
		phone: '1',
		email: 'a@b.c',
		guardian: { name: 'g', relation: 'r', email: 'a@b.c', phone: '2' },
	},
	footwear: raw.footwear.map((pair: object) => ({ ...pair, note: 'n', price: 3 })),
	play: { ...raw.play, weeks: [{ from: '2027-01-01', days: [1, 2, 3, 4, 5, 6, 7] }] },
})
/** What a club document is read from: the visit as it stands, with or without answers. */
const ofVisit = (visit: Visit, decisions: Decisions = noDecisions) => ({
	visit,
	assessment: assess(visit),
	decisions,
})
const markedDecisions = (marks: Marks): Decisions => ({
	lines: [
		{
			findingId: marks.secret('id'),
			choice: 'add',
			says: marks.secret('says'),
			why: marks.secret('why'),
		},
	],
	actions: [{ what: marks.secret('what'), when: marks.secret('when'), who: marks.secret('who') }],
	warningSigns: [marks.secret('sign')],
	referralDone: marks.secret('done'),
	heelRaiseWhy: marks.secret('raise'),
	reviewDate: '2027-05-05',
	insert: {
		left: [
			{
				element: marks.secret('element'),
				choice: 'change',
				why: marks.secret('reason'),
				option: marks.secret('option'),
				says: marks.secret('words'),
			},
		],
	},
	screeningDone: [{ side: 'left', done: marks.secret('screen'), items: [marks.secret('item')] }],
})
const markedPlan = (marks: Marks, pair: string | undefined) => ({
	sessions: [
		{
			date: '2027-03-02',
			start: '18:00',
			kind: 'training' as const,
			surface: 'hall',
			pair,
			minutes: 75,
			reasons: [marks.secret('because')],
			unmet: [marks.secret('unmet')],
			title: marks.secret('title'),
		},
	],
	pairs: [{ id: pair ?? '', name: marks.secret('pair') }],
})

describe('what a club may read', () => {
	it.each([
		['missing', undefined, /consent: missing/],
		['another purpose', { ...consent, purpose: 'squad-club' }, /purpose/],
		['denied', { ...consent, decision: 'deny' }, /not given/],
		['not yet', { ...consent, given: '2027-03-02' }, /not yet in force/],
		['withdrawn', { ...consent, withdrawn: on }, /withdrawn/],
		['run out', { ...consent, until: '2027-02-28' }, /run out/],
	] as [string, ClubConsent | undefined, RegExp][])(
		'refuses a consent that is %s',
		(_name, given, words) => {
			const visit = read(json(demoNames[0]!))
			const fields = () => clubFields(ofVisit(visit), given, { on, purpose: 'coach' })
			expect(fields).toThrow(NoConsent)
			expect(fields).toThrow(words)
		},
	)
	const noOther =
		'shows no value of any other field: every text and number of a visit is marked, none appears'
	it(noOther, () => {
		fc.assert(
			fc.property(
				fc.integer({ min: 100, max: 999 }),
				fc.constantFrom(...demoNames),
				fc.boolean(),
				(seed, name, insert) => {
					const marks = new Marks(seed)
					const visit = marks.mark(fullVisit(json(name))) as Visit
					// as it was assessed before its texts and numbers were marked
					const assessment = assess(read(json(name)))
					const marked = markedDecisions(marks)
					const answered = settleAll(marked, assessment.prescription, 'asked elsewhere')
					const of = { visit, assessment, decisions: insert ? answered : marked }
					const plan = markedPlan(marks, visit.footwear?.[0]?.id)
					const fields = clubFields(of, consent, {
						on,
						purpose: 'coach',
						plan,
						limits: practicalLimits,
						minutesToChange: 5,
					})
					const squadFields = clubFields(
						of,
						{ ...consent, purpose: 'squad-club' },
						{ on, purpose: 'squad-club', plan },
					)
					const letter = coachLetter(fields, { clinic, on, draft: false })
					for (const document of [
						letter,
						squadForClub([squadFields], { clinic, on, team: 'Team', draft: false }),
					]) {
						const text =
							`${JSON.stringify({ ...document, letterhead: 0 })} ` +
							`${toHtml(document, { href: 'a.css' })}`
						for (const secret of marks.secrets)
							expect(text.includes(secret), `${document.kind}: ${secret}`).toBe(false)
						expect(text).toContain(visit.player.familyName)
					}
					expect(
						letter.blocks.some(
							(block) =>
								block.kind === 'facts' &&
								block.rows.some(
									({ label, text }) =>
										label === sentences['coach.insert'] && text === (insert ? 'yes' : 'no'),
								),
						),
					).toBe(true)
				},
			),
			{ numRuns: 60 },
		)
	})
	it('changes in no word when only clinical fields change', () => {
		const visit = read(json(demoNames[0]!))
		const bare = read({
			...json(demoNames[0]!),
			body: undefined,
			ankles: undefined,
			posture: undefined,
			conditions: [],
			screening: undefined,
			notes: 'x',
		})
		const of = ofVisit(visit)
		const letterOf = (seen: Visit) =>
			JSON.stringify(
				coachLetter(clubFields({ ...of, visit: seen }, consent, { on, purpose: 'coach' }), {
					clinic,
					on,
					draft: false,
				}),
			)
		expect(letterOf(bare)).toBe(letterOf(visit))
	})
	it('is that a player may not train, without a word of the reason', () => {
		const letterOf = (screening: object) => {
			const visit = read({ ...json(demoNames[0]!), screening })
			const plan = {
				sessions: [{ date: '2027-03-02', kind: 'match' as const, surface: 'hall' }],
				pairs: [],
			}
			const fields = clubFields(ofVisit(visit), consent, { on, purpose: 'coach', plan })
			return { fields, text: JSON.stringify(coachLetter(fields, { clinic, on, draft: false })) }
		}
		const well = letterOf({})
		const one = letterOf({ breathlessOrChestPain: true })
		const other = letterOf({ fever: true })
		expect(well.fields).toMatchObject({ mayTrain: true, mayPlay: true })
		expect(well.text).not.toContain(sentences['coach.noSport'])
		expect(one.fields).toMatchObject({ mayTrain: false, mayPlay: false, sessions: [], pairs: [] })
		expect(one.text).toContain(sentences['coach.noSport'])
		expect(one.text).toBe(other.text)
	})
	it('puts those who may not play first, then goes by name', () => {
		const fieldsOf = (familyName: string, screening: object) => {
			const raw = json(demoNames[0]!)
			const visit = read({ ...raw, screening, player: { ...raw.player, familyName } })
			return clubFields(
				ofVisit(visit),
				{ ...consent, purpose: 'squad-club' },
				{ on, purpose: 'squad-club' },
			)
		}
		const sheet = squadForClub(
			[fieldsOf('Abel', {}), fieldsOf('Baker', {}), fieldsOf('Zander', { fever: true })],
			{ clinic, on, draft: false },
		)
		const table = sheet.blocks.find((block) => block.kind === 'table')
		const names = table?.kind === 'table' ? table.rows.map(([name]) => name) : []
		expect(names).toEqual(['Tui Zander', 'Tui Abel', 'Tui Baker'])
	})
})
