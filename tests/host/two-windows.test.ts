/** Two windows on one draft of one host: nothing is overwritten unseen, and who has it is known. */
import { describe, expect, test } from 'vitest'
import type { DraftContent, OutputOf } from '../../shared/contract.ts'
import { decideAll } from '../decide.ts'
import { type Opened, open, passphrase, signed, withPlayer } from './bench-app.ts'

const visitDate = '2027-01-20'
type Visit = Partial<DraftContent['visit']>

/** A window: what it shows, and what it knows of the host. */
class Window {
	readonly name: string
	readonly playerId: string
	app: Opened
	draftId = ''
	content!: DraftContent
	base!: DraftContent
	revision = ''
	others: OutputOf<'drafts.look'>['others'] = []
	constructor(app: Opened, playerId: string, name: string) {
		this.app = app
		this.playerId = playerId
		this.name = `window-${name}`
	}
	async opens(): Promise<this> {
		const { playerId, name: window } = this
		const { draft, others } = await this.app.ask('drafts.open', { playerId, visitDate, window })
		this.others = others
		this.draftId = draft.draftId
		this.#knows(draft)
		return this
	}
	#knows({ content, revision }: { content?: DraftContent; revision: string }): void {
		this.content = this.base = content ?? this.content
		this.revision = revision
	}
	types(visit: Visit): this {
		this.content = { ...this.content, visit: { ...this.content.visit, ...visit } }
		return this
	}
	async saves(): Promise<OutputOf<'drafts.save'>> {
		const { draftId, content, base, name: window } = this
		const answer = await this.app.ask('drafts.save', { draftId, content, base, window })
		this.#knows(answer)
		return answer
	}
	async looks(): Promise<OutputOf<'drafts.look'>> {
		const { draftId, revision, name: window } = this
		const answer = await this.app.ask('drafts.look', { draftId, window, revision })
		this.others = answer.others
		if (answer.content) this.#knows(answer)
		return answer
	}
}
async function two() {
	const { app, here, playerId } = await withPlayer()
	const first = await new Window(app, playerId, 'first').opens()
	const second = await new Window(app, playerId, 'second').opens()
	return { app, here, playerId, first, second }
}
const feet = (left: Record<string, number>): Visit => ({ feet: { left } })

describe('what two windows type', () => {
	test('stands of both, whichever knew less when it saved', async () => {
		const { app, first, second } = await two()
		await second.types(feet({ heelToBallMm: 200 })).saves()
		const answer = await first.types(feet({ ballWidthMm: 104 })).saves()
		expect(answer.content?.visit.feet).toEqual({ left: { heelToBallMm: 200, ballWidthMm: 104 } })
		await second.looks()
		expect(second.content).toEqual(first.content)
		await second.types({ notes: 'a' }).saves()
		await first.looks()
		expect(first.content.visit).toMatchObject({
			notes: 'a',
			feet: { left: { heelToBallMm: 200, ballWidthMm: 104 } },
		})
		expect(first.content.typedTwice).toBeUndefined()
		app.close()
	})
	test('is answered back only where it differs from what was sent', async () => {
		const { app, first, second } = await two()
		expect((await first.types({ notes: 'a' }).saves()).content).toBeUndefined()
		expect((await first.types({ notes: 'ab' }).saves()).content).toBeUndefined()
		expect((await second.looks()).content?.visit.notes).toBe('ab')
		expect((await second.looks()).content).toBeUndefined()
		app.close()
	})
	test('into one field is kept of both, with who typed what and when; one is chosen to sign', async () => {
		const { app, playerId, first, second } = await two()
		await decideAll(app.ask, playerId, visitDate)
		await first.looks()
		await second.looks()
		await second.types(feet({ ballWidthMm: 102 })).saves()
		app.clock.ms += 5000
		await first.types(feet({ ballWidthMm: 104 })).saves()
		expect(first.content.visit.feet).toEqual({ left: { ballWidthMm: 104 } })
		const [line] = first.content.typedTwice ?? []
		expect(line).toEqual({
			path: 'visit.feet.left.ballWidthMm',
			keys: ['visit', 'feet', 'left', 'ballWidthMm'],
			is: '[102]',
			by: 'A. Example',
			at: '2027-01-20T09:00:00.000Z',
			standsBy: 'A. Example',
			standsAt: '2027-01-20T09:00:05.000Z',
		})
		await second.looks()
		expect(second.content.typedTwice).toEqual([line])
		const { code, problems } = await app.refused('visits.sign', { draftId: first.draftId })
		expect(code).toBe('visits.cannot-be-signed')
		expect(problems?.map(({ path, message }) => [path, message])).toContainEqual([
			'visit.feet.left.ballWidthMm',
			'Ball width, left was typed twice: 104 mm stands, 102 mm was typed too. Keep one of the two, above.',
		])
		const { typedTwice: _, ...kept } = second.content
		second.content = kept
		await second.saves()
		await first.looks()
		expect(first.content.typedTwice).toBeUndefined()
		expect(first.content.visit.feet).toEqual({ left: { ballWidthMm: 104 } })
		app.close()
	})
	test('once the other entry is typed anew it stands, and nothing is left to choose', async () => {
		const { app, first, second } = await two()
		await second.types(feet({ ballWidthMm: 102 })).saves()
		await first.types(feet({ ballWidthMm: 104 })).saves()
		await first.types(feet({ ballWidthMm: 102 })).saves()
		expect(first.content.typedTwice).toBeUndefined()
		app.close()
	})
	test('is joined after the host was started anew, and an answer that was lost asks nothing', async () => {
		const { app, here, first, second } = await two()
		await second.types(feet({ heelToBallMm: 200 })).saves()
		const before = first.base
		await first.types(feet({ ballWidthMm: 104, heelWidthMm: 60 })).saves()
		app.close()
		const again = open(here)
		await again.ask('session.unlock', { passphrase })
		first.app = second.app = again
		// the answer never came: the window knows what it knew, and its hand went on
		first.base = before
		first.content = before
		await first.types(feet({ ballWidthMm: 105 })).saves()
		expect(first.content.visit.feet).toEqual({ left: { heelToBallMm: 200, ballWidthMm: 105 } })
		expect(first.content.typedTwice).toBeUndefined()
		again.clock.ms += 9000
		await second.types(feet({ heelToBallMm: 200, ballWidthMm: 99 })).saves()
		expect(second.content.typedTwice).toMatchObject([
			{ is: '[105]', by: 'A. Example', at: '2027-01-20T09:00:00.000Z' },
		])
		again.close()
	})
	test('of a caller that does not say what it knew is taken as it is', async () => {
		const { app, first, second } = await two()
		await second.types({ notes: 'a' }).saves()
		const content = { ...first.content, visit: { ...first.content.visit, complaint: 'heel' } }
		await app.ask('drafts.save', { draftId: first.draftId, content })
		await second.looks()
		expect(second.content.visit).toMatchObject({ complaint: 'heel' })
		expect(second.content.visit.notes).toBeUndefined()
		app.close()
	})
	test('that does not go together is refused with the field; both keep what they have', async () => {
		const { app, first, second } = await two()
		const pairs = (from: number) => Array.from({ length: 15 }, (_, at) => ({ id: `p${from + at}` }))
		await second.types({ footwear: pairs(0) }).saves()
		const { draftId, base, name: window } = first
		const { content } = first.types({ footwear: pairs(20) })
		const refused = await app.refused('drafts.save', { draftId, content, base, window })
		expect(refused.code).toBe('visits.entries-cannot-stand')
		expect(refused.problems?.map(({ path }) => path)).toEqual(['visit.footwear'])
		expect((await first.looks()).content?.visit.footwear).toHaveLength(15)
		app.close()
	})
})
describe('who has it', () => {
	test('is told to each of the others, with since when and the last entry, until it leaves', async () => {
		const { app, first, second } = await two()
		expect(first.others).toEqual([])
		expect(second.others).toEqual([{ by: 'A. Example', since: '2027-01-20T09:00:00.000Z' }])
		app.clock.ms += 60_000
		await second.types({ notes: 'a' }).saves()
		await first.looks()
		expect(first.others).toEqual([
			{
				by: 'A. Example',
				since: '2027-01-20T09:00:00.000Z',
				typedAt: '2027-01-20T09:01:00.000Z',
			},
		])
		const { draftId, name: window } = second
		await app.ask('drafts.look', { draftId, window, leaves: true })
		expect((await first.looks()).others).toEqual([])
		app.close()
	})
	test('is forgotten once nothing was heard of it for minutes', async () => {
		const { app, first, second } = await two()
		await second.looks()
		app.clock.ms += 151_000
		expect((await first.looks()).others).toEqual([])
		app.close()
	})
	test('is no sign of a person at the keyboard, and stands in the trail once', async () => {
		const { app, first } = await two()
		const reads = async () =>
			(await app.ask('audit.page', { limit: 200 })).rows.filter(
				(row: { objectRef: string; function: string }) =>
					row.objectRef === 'draft' && row.function === 'read',
			).length
		const before = await reads()
		for (let times = 0; times < 5; times++) await first.looks()
		expect(await reads()).toBe(before)
		const { draftId } = first
		await app.ask('drafts.look', { draftId, window: 'window-third' })
		expect(await reads()).toBe(before + 1)
		for (let minutes = 0; minutes < 120; minutes++) {
			app.clock.ms += 60_000
			const answer = await app.call('drafts.look', { draftId, window: first.name })
			if (!answer.ok) {
				expect(answer.code).toBe('people.locked')
				app.close()
				return
			}
		}
		throw new Error('the records were never locked')
	})
})
describe('a draft that ended elsewhere', () => {
	test('signed: the other window is told by whom and when, and its save is refused', async () => {
		const { app, playerId, first } = await two()
		app.clock.ms += 60_000
		await signed(app, playerId)
		expect((await first.looks()).ended).toEqual({
			how: 'signed',
			at: '2027-01-20T09:01:00.000Z',
			by: 'A. Example',
		})
		const { draftId, content } = first
		expect((await app.refused('drafts.save', { draftId, content })).code).toBe(
			'visits.draft-not-open',
		)
		app.close()
	})
	test('is gone where nobody knows more', async () => {
		const { app } = await two()
		expect(
			(await app.ask('drafts.look', { draftId: 'of-yesterday', window: 'window-first' })).ended,
		).toEqual({ how: 'gone' })
		app.close()
	})
	test('is not signed over what whoever signs was not shown', async () => {
		const { app, playerId, first, second } = await two()
		await decideAll(app.ask, playerId, visitDate)
		await first.looks()
		await first.saves()
		const { draftId, revision } = first
		await second.looks()
		await second.types({ complaint: 'sore heel' }).saves()
		expect((await app.refused('visits.sign', { draftId, revision })).code).toBe(
			'visits.changed-meanwhile',
		)
		app.close()
	})
})
test('a student neither is shown nor settles nor loses what only a clinician reads', async () => {
	const { app, first, second } = await two()
	await app.ask('people.save', {
		name: 'Invented student',
		registration: '',
		role: 'student',
		passphrase: 'student words',
	})
	const note = (text: string): Visit => ({ screening: { safeguardingNote: text } })
	await second.types(note('Zq-one-Zq')).saves()
	await first.types(note('Zq-two-Zq')).saves()
	expect(first.content.typedTwice).toHaveLength(1)
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: 'student words' })
	const student = await new Window(app, first.playerId, 'student').opens()
	expect(JSON.stringify(student)).not.toContain('Zq-')
	expect((await student.types({ notes: 'by the student' }).saves()).content).toBeUndefined()
	const { draftId } = student
	await app.ask('drafts.save', { draftId, content: student.types({ notes: 'more' }).content })
	const refused = await app.refused('visits.sign', { draftId })
	expect(JSON.stringify(refused)).not.toContain('Zq-')
	expect(JSON.stringify(refused)).toContain('A clinician keeps one of the two')
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase })
	await first.opens()
	expect(first.content.visit).toMatchObject({ notes: 'more', ...note('Zq-two-Zq') })
	expect(first.content.typedTwice).toMatchObject([{ is: '["Zq-one-Zq"]' }])
	app.close()
})
