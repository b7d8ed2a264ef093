/** How long records are kept: what is due, what is on hold, what was destroyed and by whom. */
import { rmSync } from 'node:fs'
import { join } from 'node:path'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import {
	keepUntil,
	type RegisterLine,
	registerLineSchema,
} from '../../../shared/desk/records/retention.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { fullName, plain } from '../players/names.ts'
import { type Deps, Refusal, type State } from '../records/state.ts'

interface Clock {
	playerId: string
	name: string
	birthDate: string
	/** ISO 8601 days */
	firstEntry: string
	lastEntry: string
	keepUntil: string
}
const nameOf = (state: State, playerId: string): string => fullName(state.entry(playerId).player)
/** The clock of each shown player; merged records count together, the last entry of any of them. */
function clocks(state: State, { store }: Deps): Clock[] {
	const entries = store.lastEntries([...state.players.keys()])
	return state.ordered().flatMap(({ card }) => {
		const { playerId, birthDate } = card
		const times = state.idsOf(playerId).flatMap((id) => entries.get(id) ?? [])
		if (times.length === 0) return []
		const firstEntry = dayOf(times.map((time) => time.first).sort()[0])
		const lastEntry = dayOf(
			times
				.map((time) => time.last)
				.sort()
				.at(-1),
		)
		return [
			{
				playerId,
				name: fullName(card),
				birthDate,
				firstEntry,
				lastEntry,
				keepUntil: keepUntil(birthDate, lastEntry, state.settings.retention),
			},
		]
	})
}
const dayOf = (at: string | undefined): string => at?.slice(0, 10) ?? ''
const isHeld = (state: State, playerId: string): boolean =>
	state.idsOf(playerId).some((id) => state.holds.has(id))
/** Whose records need not be kept any longer on a day, and whose are on hold. */
export function retentionDue(
	state: State,
	deps: Deps,
	{ on }: InputOf<'retention.due'>,
): OutputOf<'retention.due'> {
	const day = on ?? dayHere(deps.now())
	return {
		rule: `${state.settings.retention.name}. ${state.settings.retention.source}`,
		due: clocks(state, deps)
			.filter((clock) => clock.keepUntil <= day && !isHeld(state, clock.playerId))
			.map(({ firstEntry: _, ...shown }) => shown),
		held: [...state.holds].flatMap(([playerId, { reason }]) =>
			state.players.has(playerId) ? [{ playerId, name: nameOf(state, playerId), reason }] : [],
		),
	}
}
/** Puts a record on hold or releases it. @throws Refusal where nothing would change */
export function hold(
	state: State,
	{ store, now }: Deps,
	{ playerId, reason, on }: InputOf<'retention.hold'>,
): OutputOf<'retention.hold'> {
	state.entry(playerId)
	const known = state.holds.get(playerId)
	if (on === (known !== undefined))
		throw new Refusal(on ? 'This record is on hold already.' : 'This record is not on hold.')
	const recordId = store.append({
		kind: 'hold',
		at: now().toISOString(),
		follows: known?.recordId,
		value: { playerId, reason, on },
		about: playerId,
	})
	if (on) state.holds.set(playerId, { reason, recordId })
	else state.holds.delete(playerId)
	return {}
}
/**
 * Removes every record about a player for good. The name must be typed: a wrong line cannot be
 * destroyed by a slip.
 */
export async function destroy(
	state: State,
	deps: Deps,
	{ playerId, reason, name, alsoBackups }: InputOf<'retention.destroy'>,
): Promise<OutputOf<'retention.destroy'>> {
	const { store } = deps
	// a daily backup that is being written now must stand in the list of those that hold the record
	await store.backupsDone()
	const clock = mustBeDestroyable(state, deps, playerId, name)
	const ids = state.idsOf(playerId)
	const recordIds = ids.flatMap((id) => store.recordsAbout(id))
	const draftIds = [...state.drafts]
		.filter(([, draft]) => ids.includes(draft.playerId))
		.map(([draftId]) => draftId)
	const line: RegisterLine = {
		playerId,
		name: nameOf(state, playerId),
		from: clock.firstEntry,
		to: clock.lastEntry,
		destroyedOn: dayHere(deps.now()),
		by: state.acts().name,
		rule: state.settings.retention.name,
		reason,
		recordIds,
	}
	store.destroy(recordIds, draftIds, () => {
		store.append({ kind: 'register', at: deps.now().toISOString(), value: line, does: 'destroy' })
	})
	forget(state, ids, draftIds)
	const older = store.backups()
	if (alsoBackups && older.length > 0) {
		// the new copy is made and checked first: there is a good one at every moment
		await store.backup('after-destruction')
		for (const { folder, file } of older) rmSync(join(folder, file), { force: true })
		store.audit({ function: 'destroy', objectRef: `backups:${older.length}` })
		return { records: recordIds.length, backupsThatStillHold: [] }
	}
	return { records: recordIds.length, backupsThatStillHold: older.map(({ file }) => file) }
}
/** @param name as it was typed. @throws Refusal in words; nothing is destroyed then */
function mustBeDestroyable(state: State, deps: Deps, playerId: string, name: string): Clock {
	const whole = nameOf(state, playerId)
	const today = dayHere(deps.now())
	if (plain(name.trim()) !== plain(whole))
		throw new Refusal('The name does not match this player. Nothing was destroyed.', [
			{ path: 'name', message: `given "${name}", allowed: ${whole}` },
		])
	if (state.mergedAway(playerId))
		throw new Refusal('This record was merged into another player. Undo the merge first.')
	if (isHeld(state, playerId))
		throw new Refusal(
			'This record is on hold (complaint, claim or dispute). Release the hold first.',
		)
	const clock = clocks(state, deps).find((found) => found.playerId === playerId)
	if (!clock || clock.keepUntil > today)
		throw new Refusal(
			`This record is to be kept until ${clock?.keepUntil ?? 'a day that cannot be computed'} ` +
				`by the rule of the clinic (${state.settings.retention.name}). Nothing was destroyed.`,
		)
	return clock
}
/** Takes what was destroyed out of memory. */
function forget(state: State, playerIds: readonly string[], draftIds: readonly string[]): void {
	for (const draftId of draftIds) state.drafts.delete(draftId)
	for (const [mergeId, merge] of state.merges)
		if (playerIds.includes(merge.into)) state.merges.delete(mergeId)
	for (const id of playerIds) state.players.delete(id)
	state.reorder()
}
/** What was destroyed: a line for each player, without the ids. */
export function register({ store }: Deps): OutputOf<'retention.register'> {
	return { lines: destroyedLines(store).map(({ recordIds: _, ...line }) => line) }
}
/** What was destroyed, with the ids of all records that went. */
export const destroyedLines = (store: Deps['store']): RegisterLine[] =>
	store.load(['register']).records.map((record) => registerLineSchema.parse(record.value))
