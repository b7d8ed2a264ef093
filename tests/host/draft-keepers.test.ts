/**
 * Windows as the screen keeps them, over a real host: whatever two of them type and whenever they
 * save and look, both end with the same draft, and nothing typed is lost unseen.
 */
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { call as hostDoor } from '../../renderer/host.ts'
import { DraftKeeper } from '../../renderer/screens/assessment/draftKeeper.ts'
import type { DraftContent } from '../../shared/contract.ts'
import { entryAt } from '../../shared/engine/visit/entry-at.ts'
import { type Opened, signed, withPlayer } from './bench-app.ts'

const visitDate = '2027-01-20'
let app: Opened
let players = 0
beforeAll(async () => {
	;({ app } = await withPlayer())
	// the screens' own door, so that refusals come as they do there
	Object.assign(globalThis, { window: { lastwright: app } })
})
afterAll(() => app.close())

/** A keeper whose hand is where `hand` says; nothing is saved before it is asked for. */
async function opened(playerId: string, name: string) {
	const hand = { at: [] as string[] }
	const window = `window-${name}`
	const keeper = new DraftKeeper({
		window,
		save: (input) => hostDoor('drafts.save', input),
		look: (input) => hostDoor('drafts.look', input),
		held: () => hand.at,
		later: () => () => {},
	})
	keeper.begin(await app.ask('drafts.open', { playerId, visitDate, window }))
	return { keeper, hand }
}
async function two() {
	players++
	const { playerId } = await app.ask('players.save', {
		player: {
			givenName: `Given ${players}`,
			familyName: 'Family',
			birthDate: '2009-02-03',
			sex: 'male',
		},
	})
	return {
		playerId: playerId as string,
		first: await opened(playerId, 'first'),
		second: await opened(playerId, 'second'),
	}
}
type Keeper = Awaited<ReturnType<typeof opened>>['keeper']
const shown = ({ view }: Keeper): DraftContent => view.content!
const fields = {
	massKg: ['body', 'massKg'],
	statureCm: ['body', 'statureCm'],
	sittingHeightCm: ['body', 'sittingHeightCm'],
} as const
type Field = keyof typeof fields
const keysOf = (field: Field) => ['visit', ...fields[field]]
const typed = (keeper: Keeper, body: { [Key in Field]?: number }): void => {
	const now = shown(keeper)
	keeper.put({ ...now, visit: { ...now.visit, body: { ...now.visit.body, ...body } } })
}
const entryOf = (content: DraftContent, field: Field) =>
	`${field} ${JSON.stringify(entryAt(content, keysOf(field)))}`

type Hands = Awaited<ReturnType<typeof opened>>
/** What was typed in a run, and what was typed over by who saw it. */
interface Run {
	typed: string[]
	replaced: Set<string>
	next: number
}
function types({ keeper, hand }: Hands, field: Field, stays: boolean, run: Run): void {
	run.next++
	hand.at = stays ? [keysOf(field).join('.')] : []
	run.replaced.add(entryOf(shown(keeper), field))
	typed(keeper, { [field]: run.next })
	run.typed.push(entryOf(shown(keeper), field))
}
async function does({ keeper, hand }: Hands, what: 'save' | 'look' | 'leave'): Promise<void> {
	if (what === 'save') await keeper.save()
	if (what === 'look') await keeper.look()
	if (what !== 'leave') return
	hand.at = []
	keeper.handLeft()
}
const fieldNames = Object.keys(fields) as Field[]
const act = fc.record({
	does: fc.constantFrom('type', 'type', 'type', 'save', 'look', 'leave'),
	who: fc.boolean(),
	field: fc.constantFrom(...fieldNames),
	stays: fc.boolean(),
})

/** Two windows do all of it, then both come to rest. */
async function playOut(acts: readonly (typeof act extends fc.Arbitrary<infer T> ? T : never)[]) {
	const { first, second } = await two()
	const run: Run = { typed: [], replaced: new Set(), next: 100 }
	for (const { does: what, who, field, stays } of acts) {
		app.clock.ms += 1000
		const window = who ? first : second
		if (what === 'type') types(window, field, stays, run)
		else await does(window, what as 'save')
	}
	for (const window of [first, second, first, second])
		for (const what of ['leave', 'save', 'look', 'leave'] as const) await does(window, what)
	return { first, second, run }
}

describe('two keepers', () => {
	test('end alike; each value stands, is kept beside, or was typed over by who saw it', async () => {
		await fc.assert(
			fc.asyncProperty(fc.array(act, { maxLength: 14 }), async (acts) => {
				const { first, second, run } = await playOut(acts)
				const end = shown(first.keeper)
				expect(end).toEqual(shown(second.keeper))
				const stands = fieldNames.map((field) => entryOf(end, field))
				const beside = (end.typedTwice ?? []).map(({ keys, is }) => `${keys.at(-1)} ${is}`)
				const found = new Set([...stands, ...beside, ...run.replaced])
				expect(run.typed.filter((entry) => !found.has(entry))).toEqual([])
			}),
			{ numRuns: 40 },
		)
	})
	test('nothing comes under the hand; it is shown once the hand left', async () => {
		const { first, second } = await two()
		first.hand.at = ['visit.body.massKg']
		typed(second.keeper, { massKg: 52, statureCm: 160 })
		await second.keeper.save()
		await first.keeper.look()
		expect(shown(first.keeper).visit.body).toEqual({ statureCm: 160 })
		first.hand.at = []
		first.keeper.handLeft()
		expect(shown(first.keeper).visit.body).toEqual({ massKg: 52, statureCm: 160 })
		expect(first.keeper.dirty).toBe(false)
	})
	test('what is typed over a value that waited is typed twice', async () => {
		const { first, second } = await two()
		first.hand.at = ['visit.body.massKg']
		typed(second.keeper, { massKg: 52 })
		await second.keeper.save()
		await first.keeper.look()
		typed(first.keeper, { massKg: 51 })
		await first.keeper.save()
		expect(shown(first.keeper).typedTwice).toMatchObject([{ is: '[52]' }])
		expect(shown(first.keeper).visit.body).toEqual({ massKg: 51 })
	})
	test('is not signed before what came was seen', async () => {
		const { first, second } = await two()
		typed(second.keeper, { massKg: 52 })
		await second.keeper.save()
		await expect(first.keeper.saveToSign()).rejects.toThrow('look it over and sign again')
		expect(await first.keeper.saveToSign()).toEqual(expect.any(String))
	})
	test('of a draft that was signed elsewhere keeps what was typed, and says so', async () => {
		const { playerId, first } = await two()
		await signed(app, playerId)
		typed(first.keeper, { massKg: 52 })
		await expect(first.keeper.save()).rejects.toThrow('not open any more')
		const { content, ended, saved } = first.keeper.view
		expect(ended).toMatchObject({ how: 'signed', by: 'A. Example' })
		expect(saved).toEqual({
			state: 'failed',
			says: 'Signed elsewhere: nothing more is saved here',
		})
		expect(content?.visit.body).toEqual({ massKg: 52 })
		expect(first.keeper.dirty).toBe(true)
	})
})
