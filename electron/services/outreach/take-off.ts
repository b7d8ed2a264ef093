/** On the laptop: taking the records off once home has them. */
import { rmSync } from 'node:fs'
import { join } from 'node:path'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { goesOut } from '../../../shared/desk/outreach/travels.ts'
import type { RegisterLine } from '../../../shared/desk/records/retention.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import type { Store } from '../../store/store.ts'
import { typedBy } from '../players/typed.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { forget } from '../records/remember.ts'
import { packNote } from './laptop.ts'
import type { PackNote } from './memory.ts'
import { type ReturnNote, returnNoteOf, stampOf } from './way-back.ts'

/**
 * Takes the records off the laptop, once home has shown by its receipt that it read just this file.
 * A register line for each player stays.
 * @throws Refusal in words; nothing is removed then
 */
export async function removeHere(
	memory: Memory,
	deps: Deps,
	{ receipt }: InputOf<'outreach.remove'>,
): Promise<OutputOf<'outreach.remove'>> {
	const { store, keep, now } = deps
	const { pack, back } = mustBeHome(memory, store, receipt)
	await store.backupsDone()
	const leaving = store.carry([...memory.players.byId.keys()], leavesLaptop)
	const lines = registerLines(memory, deps, leaving, {
		rule: 'pack brought home',
		reason: `pack ${pack.packId} was merged at home, receipt ${back.receipt}`,
	})
	const emptied: PackNote = { ...pack, players: [], bases: [], removedAt: now().toISOString() }
	store.destroy(
		leaving.map(({ id }) => id),
		[...memory.drafts.byId.keys()],
		() => {
			for (const value of lines) keep({ kind: 'register', value })
			store.setSealedSetting(packNote, emptied)
		},
	)
	for (const { folder, file, madeBy } of store.backups())
		if (madeBy !== 'other') rmSync(join(folder, file), { force: true })
	store.removeLeftovers()
	forget(memory, new Set(leaving.map(({ id }) => id)))
	memory.drafts.clear()
	memory.outreach.pack = emptied
	return { records: leaving.length, lines: lines.length }
}
/** The clinic's own records stay on a laptop that was emptied, and its register. */
const leavesLaptop = (kind: string): boolean => goesOut(kind) !== 'clinic' && kind !== 'register'
/** @returns the pack of these records and the file of the way back that home has read */
function mustBeHome(
	memory: Memory,
	store: Store,
	receipt: string,
): { pack: PackNote; back: ReturnNote } {
	const { pack } = memory.outreach
	const back = returnNoteOf(store)
	if (!pack || pack.removedAt)
		throw new Refusal(
			'outreach.no-pack-here',
			'There is no pack on these records. Nothing was removed.',
		)
	if (!back)
		throw new Refusal(
			'outreach.way-back-not-made',
			'The file for the way back was not made yet. Make it and bring it home first.',
		)
	if (receipt.trim().toLowerCase() !== back.receipt)
		throw new Refusal(
			'outreach.other-receipt',
			'This is not the receipt of the last file for the way back. Nothing was removed.',
			[
				{
					path: 'receipt',
					message:
						`given "${receipt}", allowed: the receipt that Outreach at home shows after ` +
						'the merge',
				},
			],
		)
	const typing = typedBy(store)
	if (typing.length > 0)
		throw new Refusal(
			'outreach.details-not-saved',
			`Details of players were typed here and not saved, by ${whoTyped(memory, typing)}. Save or ` +
				'discard them on the page of the player first. Nothing was removed.',
		)
	if (stampOf(memory, store) !== back.stamp)
		throw new Refusal(
			'outreach.entered-since',
			'Something was entered here after the file for the way back was made. Make it again and ' +
				'bring it home first. Nothing was removed.',
		)
	return { pack, back }
}
const whoTyped = ({ people }: Memory, ids: readonly string[]): string =>
	[...new Set(ids.map((id) => people.nameOf(id) ?? 'a person who left'))].join(', ')
/** A line for each player; what is about nobody is named in the first one. */
function registerLines(
	memory: Memory,
	{ now }: Deps,
	leaving: readonly Carried[],
	why: { rule: string; reason: string },
): RegisterLine[] {
	const by = memory.people.acts().name
	const destroyedOn = dayHere(now())
	const aboutNobody = leaving.filter(({ about }) => about === undefined).map(({ id }) => id)
	return [...memory.players.byId.values()].map(({ card }, index) => {
		const own = leaving.filter(({ about }) => about === card.playerId)
		const days = own.map(({ at }) => at.slice(0, 10)).sort()
		return {
			playerId: card.playerId,
			name: fullName(card),
			from: days[0] ?? '',
			to: days.at(-1) ?? '',
			destroyedOn,
			by,
			...why,
			recordIds: [...own.map(({ id }) => id), ...(index === 0 ? aboutNobody : [])],
		}
	})
}
