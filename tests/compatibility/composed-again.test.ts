/**
 * Records of before the plan: every page is composed from them without a gap, danger holds on it
 * what it held then, what was decided is read, and what was printed is printed again as it was.
 */
import { createHash } from 'node:crypto'
import { join } from 'node:path'
import { afterEach, describe, expect, test } from 'vitest'
import { renderPdf } from '../../electron/pdf/render.ts'
import { assessmentOf } from '../../electron/services/records/assessment.ts'
import { decisionRows, groupsOf, otherDecisions } from '../../renderer/screens/visit/rows.ts'
import type { SignedVisit } from '../../shared/contract.ts'
import type { KeptAssessment } from '../../shared/engine/findings/assessment.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import {
	type KindInput,
	type KindName,
	kindNames,
	kinds,
} from '../../shared/engine/report/kinds.ts'
import { planOf } from '../../shared/engine/report/plan-of.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { choiceWords } from '../../shared/engine/visit/decisions.ts'
import { fixtureNames, fixtures, readManifest } from './manifest.ts'
import { openedFrom } from './scenario/look.ts'
import { type Ask, type Opened, programAt, World } from './scenario/program.ts'

const program = {
	...(await programAt(join(import.meta.dirname, '../..'))),
	renderPdf: async (): Promise<Uint8Array> => {
		throw new Error('nothing may be drawn')
	},
}
const apps: Opened[] = []
afterEach(() => {
	for (const app of apps.splice(0)) app.close()
})
/** Fixtures whose visits have no prescription: those of before version 4 of the kind. */
const before = fixtureNames().filter((name) => (readManifest(name).kinds?.visit ?? 1) < 4)
/** The very first ones had no insert yet: their pages are printed, and none is composed. */
const released = before.filter((name) => !name.startsWith('before'))

async function opened(name: string): Promise<Opened> {
	const { lookedAt, openings } = readManifest(name)
	const home = openings.find(({ kind }) => kind === 'folder')!
	const app = await openedFrom(new World(program, lookedAt), join(fixtures, name), home)
	apps.push(app)
	await app.ask('session.unlock', { passphrase: home.passphrase })
	return app
}
interface Kept {
	signed: SignedVisit
	mayLeave: boolean
}
async function signedIn(ask: Ask): Promise<Kept[]> {
	const { cards } = await ask('players.search', { query: '', limit: 50 })
	const kept: Kept[] = []
	for (const { playerId } of cards)
		for (const line of (await ask('players.open', { playerId })).visits)
			kept.push({
				signed: await ask('visits.open', { visitId: line.visitId }),
				mayLeave: !line.inError && !line.awaitsCountersign,
			})
	return kept
}
const consentTo = (purpose: 'coach' | 'squad-club', given: string) =>
	({ id: 'c', purpose, decision: 'permit', given }) as const
/** A season of two sessions in the first pair, or in none. */
const planFor = ({ visit: { footwear = [] } }: SignedVisit): KindInput['plan'] => ({
	sessions: [
		{ date: '2027-02-01', kind: 'training', surface: 'natural-firm', pair: footwear[0]?.id },
		{ date: '2027-02-06', kind: 'match', surface: 'natural-firm', pair: footwear[0]?.id },
	],
	pairs: footwear.map(({ id, name, sole }) => ({ id, name, sole })),
})
const inputOf = (signed: SignedVisit, change: Partial<KindInput> = {}): KindInput => ({
	visit: signed.visit,
	assessment: assessmentOf(signed),
	decisions: signed.decisions,
	clinic: signed.clinic,
	signedAt: signed.signedAt,
	signedOn: signed.signedOn,
	draft: false,
	protocol: openProtocol(),
	plan: planFor(signed),
	consents: [consentTo('coach', signed.visit.visitDate)],
	on: signed.visit.visitDate,
	...change,
})
/** Each page that this input may be made of, by its name. */
function pagesOf(input: KindInput) {
	const club = {
		...input,
		audience: 'club',
		consents: [consentTo('squad-club', input.on)],
	} as const
	const asked: [KindName, KindInput][] = [
		...kindNames.map((kind): [KindName, KindInput] => [kind, input]),
		['squad', club],
	]
	return asked
		.filter(([kind, given]) => kinds[kind].problems(given).length === 0)
		.map(([kind, given]) => ({ kind, page: kinds[kind].compose(given) }))
}
/** A value that was never there, or a name that was not filled in. */
const gap = /\b(NaN|undefined|null|Infinity)\b|\[object|\{[a-z]+\}|\(\s*\)/

describe.each(released)('signed under %s', (name) => {
	test('every page is composed without a gap, and printed', async () => {
		const { ask } = await opened(name)
		const composed = new Set<KindName>()
		const kept = await signedIn(ask)
		expect(kept.length).toBeGreaterThan(0)
		for (const { signed } of kept) {
			expect(assessmentOf(signed).prescription).toBeUndefined()
			for (const { kind, page } of pagesOf(inputOf(signed))) {
				composed.add(kind)
				expect(page.blocks.length).toBeGreaterThan(0)
				for (const text of textsIn(page)) expect(text).not.toMatch(gap)
				expect(JSON.stringify(page)).not.toMatch(/NaN|undefined|Infinity|:null/)
			}
		}
		for (const { page } of pagesOf(inputOf(kept[0]!.signed)))
			expect((await renderPdf(page)).length).toBeGreaterThan(1000)
		for (const kind of ['player', 'season-chart', 'squad', 'coach'] as const)
			expect(composed).toContain(kind)
	}, 120_000)

	test('a sign above a letter holds sport and what is bought or worn for it on each page', async () => {
		const { ask } = await opened(name)
		for (const { signed } of await signedIn(ask)) {
			const assessment = assessmentOf(signed)
			const { screening } = assessment
			const [item] = screening.items
			if (!item) continue
			const sign = { ...item, state: 'yes' as const, action: 'same-day' as const }
			const raised = { ...signed.decisions, heelRaiseMm: { left: 7, right: 7 } }
			const input = inputOf(signed, {
				assessment: {
					...assessment,
					screening: { ...screening, action: 'same-day', items: [sign] },
				},
				decisions: raised,
			})
			const { gate } = planOf(input)
			expect(gate.person).toMatchObject({ state: 'held', action: 'same-day', because: [sign.id] })
			expect([...new Set(gate.person.holds.map(({ what }) => what))]).toEqual(
				expect.arrayContaining([
					'sport',
					'match',
					'impact',
					'purchase',
					'shelf',
					'season',
					'raise',
				]),
			)
			expect(kinds['season-chart'].problems(input)[0]).toMatch(/^season: held/)
			const pages = pagesOf(input)
			expect(pages.find(({ kind }) => kind === 'player')?.page.blocks[0]?.kind).toBe('alert')
			for (const { kind, page } of pages)
				for (const text of textsIn(page)) {
					expect(text, kind).not.toMatch(gap)
					// the raise waits, whatever was decided about it
					expect(text, kind).not.toMatch(/\b7 mm|7 \/ 7/)
				}
		}
	})
})
test.each(before.filter((name) => !released.includes(name)))(
	'of the records of %s no page is composed, and the refusal says why',
	async (name) => {
		const { ask } = await opened(name)
		const kept = await signedIn(ask)
		expect(kept.length).toBeGreaterThan(0)
		for (const { signed } of kept)
			expect(() => assessmentOf(signed)).toThrow(/cannot be read by this version/)
	},
)
describe.each(before)('signed under %s', (name) => {
	test('what was decided about each finding is read on the screen of the visit', async () => {
		const { ask } = await opened(name)
		const kept = await signedIn(ask)
		for (const { signed } of kept) {
			readsLines(signed)
			readsTheRest(signed)
		}
		const decided = kept.flatMap(({ signed }) => signed.decisions.lines)
		// the very first records hold no decisions
		if (!name.startsWith('before')) expect(decided.length).toBeGreaterThan(0)
	})

	test('each kept page is printed with the bytes of then', async () => {
		const { ask } = await opened(name)
		const { openings } = readManifest(name)
		const { views } = openings.find(({ kind }) => kind === 'folder')!
		const wasSeen = Object.entries(views).filter(([view]) => view.startsWith('reports.open '))
		expect(wasSeen.length).toBeGreaterThan(0)
		for (const [view, seen] of wasSeen) {
			const [, visitId, version] = view.split(' ')
			const { base64, sha256 } = await ask('reports.open', { visitId, version: Number(version) })
			const bytes = Buffer.from(base64, 'base64')
			expect(createHash('sha256').update(bytes).digest('hex')).toBe(sha256)
			expect(sha256).toBe((seen as { sha256: string }).sha256)
		}
		let handed = 0
		for (const { signed, mayLeave } of await signedIn(ask)) {
			const page = signed.pages?.find(({ kind }) => kind === 'guardian')
			const taken = page && mayLeave ? await takenAlong(ask, signed) : undefined
			if (taken === undefined) continue
			handed++
			expect(taken).toBe(page?.sha256)
		}
		// only the report was kept before 0.2.0
		if (readManifest(name).kinds) expect(handed).toBeGreaterThan(0)
	})
})
function readsLines({ decisions, assessment }: SignedVisit): void {
	const { findings } = assessment as KeptAssessment
	const said = new Map(findings.map(({ id, says }) => [id, says]))
	const rows = decisionRows({ decisions, assessment } as SignedVisit)
	expect(rows.map(({ key }) => key)).toEqual(decisions.lines.map(({ findingId }) => findingId))
	for (const { key, says, choice } of rows) {
		expect(Object.values(choiceWords)).toContain(choice)
		expect(says).toBe(said.get(key))
		expect(says.length).toBeGreaterThan(10)
	}
}
function readsTheRest(signed: SignedVisit): void {
	const { referralDone, actions } = signed.decisions
	const others = otherDecisions(signed).flatMap(({ values }) => values)
	const words = [...(referralDone ? [referralDone] : []), ...actions.map(({ what }) => what)]
	expect(others).toEqual(expect.arrayContaining(words))
	const entries = groupsOf(signed.visit).flatMap(({ rows }) => rows)
	expect(entries.length).toBeGreaterThan(0)
	for (const { title, values } of entries)
		for (const text of [title, ...values]) expect(text).not.toMatch(gap)
}
/** The digest of the guardian's page, handed over; undefined where no guardian is recorded. */
async function takenAlong(ask: Ask, { visitId }: SignedVisit): Promise<string | undefined> {
	const { recipients } = await ask('outbox.recipients', { visitId })
	const found = recipients.find(
		(one: { recipient: { role: string } }) => one.recipient.role === 'guardian',
	)
	if (!found) return undefined
	const { recipient } = found
	const { itemId } = await ask('outbox.add', {
		visitId,
		kind: 'guardian',
		recipientId: recipient.recipientId,
		channel: 'hand-over',
		due: '2060-01-01',
		again: 'asked for once more',
	})
	const { sha256 } = await ask('outbox.look', { itemId })
	await ask('outbox.release', { itemId, sha256, compared: true, warningsRead: true })
	const bytes = Buffer.from((await ask('outbox.take', { itemId })).base64, 'base64')
	return createHash('sha256').update(bytes).digest('hex')
}
