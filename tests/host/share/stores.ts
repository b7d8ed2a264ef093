/** Stores of several PCs of one clinic: the same data key, a name and a key of their own each. */
import { createHash } from 'node:crypto'
import { cpSync, mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Taking } from '../../../electron/share/flow/pull.ts'
import { Store } from '../../../electron/store/store.ts'

export const passphrase = 'correct horse of the clinic'
const cost = 2 ** 10
export const at = '2027-01-20T09:00:00.000Z'

export interface Place {
	folder: string
	outside: string
}
export const newPlace = (): Place => {
	const folder = mkdtempSync(join(tmpdir(), 'lastwright-shared-'))
	return { folder, outside: join(folder, '..', `${folder.split('/').at(-1)}-outside`) }
}
export async function openStore({ folder, outside }: Place): Promise<Store> {
	const store = new Store(folder, { cost, outside })
	await store.unlock(passphrase)
	return store
}
/** As many stores with the same keys, each in a folder of its own. */
export async function storesOf(howMany: number): Promise<{ place: Place; store: Store }[]> {
	const first = newPlace()
	const founding = new Store(first.folder, { cost, outside: first.outside })
	await founding.setUp(passphrase)
	founding.append({ kind: 'player', at, value: { playerId: 'from before' } })
	founding.close()
	const places = [first]
	while (places.length < howMany) {
		const place = newPlace()
		cpSync(first.folder, place.folder, { recursive: true })
		places.push(place)
	}
	const all: { place: Place; store: Store }[] = []
	for (const place of places) all.push({ place, store: await openStore(place) })
	return all
}
export const takingOf = ({ sharing }: Store): Taking => ({
	sharing,
	isGone: () => false,
	take: (records, mark) => sharing.takeAll(records, mark),
})
/** The same in each store that holds the same records, in whatever order they came. */
export function holding(store: Store): string[] {
	return store
		.kinds()
		.flatMap((kind) => store.load([kind]).records)
		.map((record) => {
			const { id, kind, at: when, origin, tick, number, value, signature } = record
			const whole = JSON.stringify([kind, when, origin, tick, number, value, signature])
			return `${id} ${createHash('sha256').update(whole).digest('hex').slice(0, 12)}`
		})
		.toSorted()
}
export const writeIn = (store: Store, value: unknown): string =>
	store.append({ kind: 'player', at, value })
