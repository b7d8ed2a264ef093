/** A file for the way back before its records are looked at: whose it is, and whether it is ours. */
import { z } from 'zod'
import type { Carried, Maker } from '../../../shared/desk/outreach/carried.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import type { OpenedPack } from '../../store/pack-file.ts'
import type { Store } from '../../store/store.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { type OutValue, type PackLog, packLog } from './pack-log.ts'
import type { Seen } from './seen-before.ts'

/** What the checks of a file for the way back look at. */
export interface Arrival {
	memory: Memory
	deps: Deps
	pack: OpenedPack
	log: PackLog
	/** the pack it answers, as it was noted when it went out; undefined where it is not noted */
	wentOut: OutValue | undefined
	/** the public key of the installation that the file names, by its origin */
	keys: ReadonlyMap<string, string>
	/** whether records without a signature may be the laptop's: it ran program 0.1.0 */
	unsigned: boolean
	/** first and last day on which the laptop could write, where they are known */
	days: { first: string | undefined; last: string }
	/** the highest place in the order of the records here, before anything came */
	lastTick: number
	/** today where this PC stands */
	today: string
	/** what was found of its records before, where it is still true */
	seen?: ReadonlyMap<Carried, Seen>
}
const installationSchema = z.looseObject({ origin: z.string(), publicKey: z.string() })

/**
 * @throws Refusal in words where the file does not belong here; nothing was changed then
 */
export function arrivalOf(memory: Memory, deps: Deps, pack: OpenedPack): Arrival {
	const { store, now } = deps
	const { manifest } = pack
	const log = packLog(deps)
	const wentOut = log.out.find(({ packId }) => packId === manifest.answers)
	mustComeHome(store, pack)
	mustBeAnswered(pack, wentOut)
	mustBeItsMaker(store, pack)
	return {
		memory,
		deps,
		pack,
		log,
		wentOut,
		keys: new Map(
			manifest.installation
				? [[manifest.installation.origin, manifest.installation.publicKey]]
				: [],
		),
		unsigned: wentOut !== undefined && wentOut.form === undefined,
		days: {
			first: wentOut && dayHere(new Date(wentOut.madeAt)),
			last: wentOut?.expires ?? manifest.expires,
		},
		lastTick: store.lastTick,
		today: dayHere(now()),
	}
}
/** Whether an origin is, or once was, the name of this installation. */
export const isOwn = (store: Store, origin: string): boolean =>
	[store.origin, store.recordsId, ...store.formerOrigins].includes(origin)

function mustComeHome(store: Store, { manifest }: OpenedPack): void {
	if (manifest.direction !== 'return')
		throw new Refusal(
			'outreach.outgoing-pack',
			'This is a pack that goes out. To bring work home, make the file for the way back on the ' +
				'laptop.',
		)
	const ours =
		manifest.recordsId === undefined
			? isOwn(store, manifest.home)
			: manifest.recordsId === store.recordsId
	if (!ours)
		throw new Refusal(
			'outreach.other-records',
			'This file belongs to other records: it went out from another clinic or another PC. ' +
				'Nothing was changed.',
		)
}
/** A file of form 1 proves nothing of its author: it is read only as the answer to one of form 1. */
function mustBeAnswered({ manifest }: OpenedPack, wentOut: OutValue | undefined): void {
	if (manifest.version > 1) return
	if (!wentOut)
		throw new Refusal(
			'outreach.pack-not-noted',
			'This file answers a pack that is not noted in these records, and was made by program ' +
				'0.1.0, which signs nothing. If these records were restored, restore a backup that was ' +
				'made after the pack went out. Nothing was changed.',
		)
	if (wentOut.form !== undefined)
		throw new Refusal(
			'outreach.other-version',
			`This file says that program 0.1.0 made it, but the pack of ${wentOut.madeAt.slice(0, 10)} ` +
				'that it answers opens in a newer version only. It was not made by that laptop. Nothing ' +
				'was changed.',
		)
}
/** The installation that the file names must not be this one, nor one that is known otherwise. */
function mustBeItsMaker(store: Store, { manifest }: OpenedPack): void {
	const { installation, version } = manifest
	if (!installation) {
		if (version === 1) return
		throw new Refusal(
			'outreach.no-maker',
			'This file does not name the laptop that made it. Make the file for the way back again on ' +
				'the laptop. Nothing was changed.',
		)
	}
	const known = publicKeyOf(store, installation.origin)
	if (
		isOwn(store, installation.origin) ||
		(known ?? installation.publicKey) !== installation.publicKey
	)
		throw new Refusal(
			'outreach.wrong-maker',
			'This file names as its maker an installation that is known here and did not make it. Ask ' +
				'who worked with the laptop. Nothing was changed.',
		)
}
/** The public key of an installation that is known here. */
export function publicKeyOf(store: Store, origin: string): string | undefined {
	return store
		.load(['installation'])
		.records.flatMap(({ value }) => installationSchema.safeParse(value).data ?? [])
		.find((installation) => installation.origin === origin)?.publicKey
}
/** What a pack says of the installation that makes it. */
export function makerOf(store: Store): Maker | undefined {
	const publicKey = publicKeyOf(store, store.origin)
	return publicKey === undefined ? undefined : { origin: store.origin, publicKey }
}
/** What a person should know of the file itself, in words. */
export function arrivalNotices({ pack, wentOut }: Arrival): string[] {
	const { unknown, manifest } = pack
	return [
		...(unknown.length > 0
			? [
					`The file was written by a newer version and says more than this one reads: ` +
						`${unknown.slice(0, 10).join(', ')}. That was left out.`,
				]
			: []),
		...(wentOut === undefined
			? [
					'The pack that this file answers is not noted in these records. Bring it in only if you ' +
						'know the laptop it comes from.',
				]
			: []),
		...(wentOut && wentOut.form === undefined
			? [
					`The pack of ${wentOut.madeAt.slice(0, 10)} went out from program 0.1.0. What its laptop ` +
						`wrote then bears no signature: who wrote it rests on the word of ${manifest.madeBy.name}.`,
				]
			: []),
	]
}
