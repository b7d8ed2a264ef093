/** The golden set in a store of its own. */
import { readdirSync, readFileSync } from 'node:fs'
import { visitCard } from '../../../electron/services/records/cards.ts'
import { Store } from '../../../electron/store/store.ts'
import type { SignedVisit } from '../../../shared/contract.ts'
import type { FurtherPage, ReportValue } from '../../../shared/desk/visits/kept-pages.ts'
import { clinic } from '../../demo.ts'
import { folder, open, passphrase } from '../bench-app.ts'

/** The kinds of records that the set holds, in the order in which they build on each other. */
export const goldenKinds = ['player', 'visit', 'report'] as const

interface Golden {
	id: string
	kind: (typeof goldenKinds)[number]
	/** of its kind's form */
	version: number
	at: string
	follows?: string
	value: unknown
}
export interface GoldenPlayer {
	/** of the file */
	name: string
	playerId: string
	records: Golden[]
}
const place = new URL('./', import.meta.url)
/** Every player of every version's set. */
export const goldenPlayers: GoldenPlayer[] = readdirSync(place, { withFileTypes: true })
	.filter((entry) => entry.isDirectory())
	.flatMap(({ name: version }) => {
		const of = new URL(`${version}/`, place)
		return readdirSync(of).map((file) => ({
			name: `${version}/${file}`,
			...JSON.parse(readFileSync(new URL(file, of), 'utf8')),
		}))
	})
/** A record as version 0.1.0 wrote it: the bytes of one report, and no document. */
export function asFirstVersion(record: Golden): Golden[] {
	if (record.kind === 'visit') {
		const { pages: _, ...visit } = record.value as SignedVisit
		return [{ ...record, version: 1, value: visit }]
	}
	if (record.kind !== 'report') return [record]
	const { further: _, document: __, ...report } = record.value as ReportValue
	return [{ ...record, version: 1, value: report }]
}
/** How each kind is found again. */
function cardOf({ kind, value }: Golden, playerId: string) {
	if (kind === 'player') return { about: playerId }
	if (kind === 'visit') {
		const card = visitCard(value as SignedVisit)
		return { about: playerId, thing: card.visitId, card }
	}
	const { visitId } = value as ReportValue
	return { about: playerId, thing: visitId }
}
/** The pages of a report record, by kind; the player's report first. */
export const pagesIn = ({ visitId: _, further = [], ...report }: ReportValue): FurtherPage[] => [
	{ kind: 'player', ...report },
	...further,
]
/** A folder whose store holds the set, under the usual passphrase. */
export async function goldenFolder(
	change: (record: Golden) => Golden[] = (record) => [record],
): Promise<string> {
	const here = folder()
	const app = open(here)
	await app.ask('session.setUp', {
		clinic: { ...clinic, name: 'A clinic that came later', logo: undefined },
		passphrase,
	})
	app.close()
	const store = new Store(here, { cost: 1024 })
	await store.unlock(passphrase)
	for (const { playerId, records } of goldenPlayers)
		for (const record of records.flatMap(change))
			store.append({ ...record, ...cardOf(record, playerId) })
	store.close()
	return here
}
