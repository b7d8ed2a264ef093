/** Home, a laptop that came back with a visit, and files that lie about it. */
import { expect } from 'vitest'
import type { Carried } from '../../shared/desk/outreach/carried.ts'
import { player, signed, withPlayer } from './bench-app.ts'
import { type Forger, forged, resealed, rewritten } from './bench-forger.ts'
import { back, balanced, bring, laptopOf, measured, packed, packPassphrase } from './bench-pack.ts'

/** The first record of a kind that came with the true file. */
export function of(
	{ records }: Forger,
	kind: string,
	where: (value: never) => boolean = () => true,
): Carried {
	const found = records.find((record) => record.kind === kind && where(record.value as never))
	if (!found) throw new Error(`no ${kind} in the file`)
	return found
}
/** The details of a player in the true file. */
export const detailsOf = (forger: Forger, playerId: string): Carried =>
	of(forger, 'player', (value: { playerId: string }) => value.playerId === playerId)

export async function homecoming() {
	const { app, playerId } = await withPlayer()
	const { playerId: other } = await app.ask('players.save', {
		player: { ...player, givenName: 'Other', familyName: 'Player' },
	})
	const own = await signed(app, playerId, measured, '2027-01-18')
	const desk = { name: 'Rae Desk', registration: '', role: 'reception' }
	await app.ask('people.save', { ...desk, passphrase: 'a desk of her own' })
	const { app: laptop } = await laptopOf(await packed(app, [playerId, other]))
	const visitId = await signed(laptop, playerId, measured, '2027-01-20')
	const file = await back(laptop)
	laptop.close()
	const theVisit = (forger: Forger) =>
		of(forger, 'visit', (value: { visitId: string }) => value.visitId === visitId)
	/** The visit of the day in the forger's hand, with its digest made to fit. */
	const visitWith = (forger: Forger, over: object, place: Partial<Carried> = {}): Carried => {
		const visit = theVisit(forger)
		return rewritten(forger, visit, resealed({ ...(visit.value as object), ...over }), place)
	}
	const picture = async () => ({
		people: await app.ask('people.list'),
		settings: await app.ask('recordSettings.get'),
		clinic: await app.ask('clinic.get'),
		player: await app.ask('players.open', { playerId }),
		other: await app.ask('players.open', { playerId: other }),
		consents: await app.ask('consents.list', { playerId }),
		outbox: await app.ask('outbox.list'),
	})
	/** Brings a file in, and expects that nothing of it took effect and that each record is named. */
	const without = async (
		make: (forger: Forger) => Carried[],
		says: RegExp,
		why: 'refused' | 'waits' = 'refused',
	) => {
		const before = await picture()
		let made = 0
		const path = await forged(file, (forger) => {
			const records = make(forger)
			made = records.length
			return { records }
		})
		const looked = await app.ask('outreach.previewMerge', {
			file: path,
			passphrase: packPassphrase,
		})
		const brought = await bring(app, path)
		balanced(brought)
		for (const result of [looked, brought]) {
			expect(result.counts).toMatchObject({ in: made, added: 0, quarantined: made, [why]: made })
			expect(result.quarantined).toHaveLength(made)
			for (const aside of result.quarantined) {
				expect(aside.says).toMatch(says)
				expect(aside.why).toBe(why)
			}
			expect(result.changes).toEqual([])
		}
		expect(await picture()).toEqual(before)
		expect((await app.ask('audit.verify')).problems).toEqual([])
	}
	return { app, playerId, other, own, file, visitId, theVisit, visitWith, picture, without }
}
export type Homecoming = Awaited<ReturnType<typeof homecoming>>
