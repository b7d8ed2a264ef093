/** For each kind of document: what is private reaches only a reader to whom it was released. */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { settleAll } from '../../shared/engine/prescription/answers.ts'
import {
	type KindInput,
	type KindName,
	kindNames,
	kinds,
} from '../../shared/engine/report/kinds.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import { privatePaths } from '../../shared/engine/visit/private.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { sentences } from '../../shared/engine/words/en/documents.table.ts'
import { privateTopicOf } from '../../shared/engine/words/statement.ts'
import { clinic } from '../demo.ts'
import { massKg, planted, young } from './planted-visit.ts'
import { wholeVisit } from './random-visit.ts'

type Topic = 'pregnancy' | 'periods' | 'medication' | 'weight' | 'safeguarding' | 'typed'
const typed = 'zq what was done about it'
/** Words that give a topic away, in any reader's sentence. */
const words: Readonly<Record<Topic, RegExp>> = {
	pregnancy: /pregnan|midwife/i,
	periods: /\bperiods?\b(?! of)|menstru|menarche/i,
	medication:
		/steroid|hormone|\bpills?\b|medication|medicine|blood thinner|anticoagul|antibiotic|floxacin|cortico/i,
	weight: new RegExp(
		`weight loss|los(t|ing) weight|weight or growth|body mass|\\bBMI\\b|\\bkg\\b|${massKg}`,
		'i',
	),
	safeguarding: /zq note|safeguard/i,
	typed: new RegExp(typed),
}
const topics = Object.keys(words) as Topic[]
const releasable = ['pregnancy', 'periods', 'medication', 'weight'] as const
const doctor: readonly Topic[] = [...releasable, 'typed']
/** Who is told of what, unless it was released: all others of nothing. */
const told: Readonly<Record<KindName, readonly Topic[]>> = {
	player: [],
	appointment: [],
	guardian: [],
	referral: doctor,
	// the figure of body mass, which the laboratory makes the shell by
	'insert-order': ['weight'],
	'season-chart': [],
	squad: [],
	coach: [],
}
/** A player for whom an insert is made. */
const flatFoot = visitSchema.parse(
	JSON.parse(
		readFileSync(new URL('./pictures/02-painful-flat-foot.json', import.meta.url), 'utf8'),
	),
)
const on = '2027-03-01'
const consent = { id: 'C-7', decision: 'permit' as const, given: '2026-01-20' }
function inputOf(visit: Visit, decisions: Decisions, draft: boolean): KindInput {
	const assessment = assess(visit)
	return {
		visit,
		assessment,
		decisions: draft ? decisions : settleAll(decisions, assessment.prescription, 'asked elsewhere'),
		clinic,
		signedAt: draft ? undefined : `${on}T09:00:00.000Z`,
		draft,
		on,
		plan: {
			sessions: [{ date: '2027-03-02', kind: 'match', surface: 'hall', pair: 'p1' }],
			pairs: [{ id: 'p1' }],
		},
		consents: [{ ...consent, purpose: 'coach' }],
	}
}
interface Page {
	name: string
	text: string
	allowed: readonly Topic[]
}
/** Every page that can be made of a visit, with what its reader may be told. */
function pagesOf(input: KindInput, released: readonly Topic[]): Page[] {
	const asClub: KindInput = {
		...input,
		audience: 'club',
		consents: [{ ...consent, purpose: 'squad-club' }],
	}
	const carried = (handedTo: 'player' | 'guardian'): KindInput => ({
		...input,
		letter: { recipient: 'Dr. Example', handedTo },
	})
	// what was done is told to whoever may be told of all that it was about
	const about = input.assessment.screening.items
		.filter(({ state }) => state === 'yes')
		.flatMap((item) => privateTopicOf(item) ?? [])
	const isAllTold = about.every((topic) => released.includes(topic))
	const family: readonly Topic[] = isAllTold ? [...released, 'typed'] : released
	const ofList: readonly Topic[] = about.length === 0 ? ['typed'] : []
	const made: [string, KindName, KindInput, readonly Topic[]][] = [
		...kindNames.map((kind): [string, KindName, KindInput, readonly Topic[]] => [
			kind,
			kind,
			input,
			// what is released for a minor may be read by both
			{ player: family, guardian: family, squad: ofList }[kind as string] ?? told[kind],
		]),
		['the club’s sheet', 'squad', asClub, []],
		['a letter by the player', 'referral', carried('player'), family],
		['a letter by the guardian', 'referral', carried('guardian'), family],
	]
	const pages = made
		.filter(([, kind, of]) => kinds[kind].problems(of).length === 0)
		.map(([name, kind, of, allowed]) => ({ name, of: kinds[kind].compose(of), allowed }))
	return pages.map(({ name, of, allowed }) => ({
		name,
		allowed,
		text: textsIn({ ...of, letterhead: undefined })
			.join('\n')
			.replaceAll(sentences['referral.medicinesKept'], ''),
	}))
}
/** The topics that a text gives away, each with the word that does. */
const foundIn = (text: string): { topic: Topic; found: string }[] =>
	topics.flatMap((topic) => {
		const found = words[topic].exec(text)?.[0]
		return found === undefined ? [] : [{ topic, found }]
	})
const everyWay = fc.record({
	visit: fc.oneof(wholeVisit, fc.constant(flatFoot)),
	paths: fc.oneof(fc.constant(privatePaths), fc.subarray([...privatePaths], { maxLength: 2 })),
	draft: fc.boolean(),
	released: fc.subarray([...releasable]),
	isAccepted: fc.boolean(),
})

describe('what is private', () => {
	it('of a minor stands on no page but of those to whom it was released', () => {
		const seen = new Map<string, number>()
		fc.assert(
			fc.property(everyWay, ({ visit: drawn, paths, draft, released, isAccepted }) => {
				const visit = planted(young(drawn), paths)
				const { findings } = assess(visit)
				const decisions: Decisions = {
					...noDecisions,
					referralDone: typed,
					released: released.map((topic) => ({ topic, to: 'guardian' as const })),
					lines: isAccepted
						? findings.map(({ id }) => ({ findingId: id, choice: 'accept' as const }))
						: [],
				}
				for (const { name, text, allowed } of pagesOf(inputOf(visit, decisions, draft), released)) {
					seen.set(name, (seen.get(name) ?? 0) + 1)
					for (const { topic, found } of foundIn(text)) {
						seen.set(topic, (seen.get(topic) ?? 0) + 1)
						expect(allowed, `${name}: ${found}`).toContain(topic)
					}
				}
			}),
			{ numRuns: 60, seed: 31 },
		)
		// the search finds what it looks for, and looks at every kind of page
		for (const name of [...kindNames, 'the club’s sheet', 'a letter by the guardian'])
			expect(seen.get(name) ?? 0, name).toBeGreaterThan(0)
		for (const topic of [...releasable, 'typed']) expect(seen.get(topic), topic).toBeGreaterThan(0)
	})
})
