import { rmSync } from 'node:fs'
import { join } from 'node:path'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import {
	keepUntil,
	type RegisterLine,
	registerLineSchema,
} from '../../../shared/desk/records/retention.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { plain } from '../players/names.ts'
import { type Deps, Refusal, type State } from '../records/state.ts'

const nameOf = (state: State, playerId: string) => {
	const { player } = state.entry(playerId)
	return `${player.givenName} ${player.familyName}`
}
/** The clock of each shown player; merged records count together, the last entry of any of them. */
function clocks(
	state: State,
	{ store }: Deps,
): {
	playerId: string
	name: string
	birthDate: string
	firstEntry: string
	lastEntry: string
	keepUntil: string
}[] {
	const entries = store.lastEntries([...state.players.keys()])
	return state.ordered().flatMap(({ card }) => {
		const times = state.idsOf(card.playerId).flatMap((id) => entries.get(id) ?? [])
		if (times.length === 0) return []
		const lastEntry =
			times
				.map((time) => time.last)
				.sort()
				.at(-1)
				?.slice(0, 10) ?? ''
		const firstEntry =
			times
				.map((time) => time.first)
				.sort()[0]
				?.slice(0, 10) ?? ''
		return [
			{
				playerId: card.playerId,
				name: `${card.givenName} ${card.familyName}`,
				birthDate: card.birthDate,
				firstEntry,
				lastEntry,
				keepUntil: keepUntil(card.birthDate, lastEntry, state.settings.retention),
			},
		]
	})
}
const isHeld = (state: State, playerId: string) =>
	state.idsOf(playerId).some((id) => state.holds.has(id))
export function retentionDue(
	state: State,
	deps: Deps,
	{ on }: InputOf<'retention.due'>,
): OutputOf<'retention.due'> {
	const day = on ?? dayHere(deps.now())
	return {
		rule: `${state.settings.retention.name}. ${state.settings.retention.source}`,
		due: clocks(state, deps)
			.filter((one) => one.keepUntil <= day && !isHeld(state, one.playerId))
			.map(({ firstEntry: _, ...one }) => one),
		held: [...state.holds].flatMap(([playerId, { reason }]) =>
			state.players.has(playerId) ? [{ playerId, name: nameOf(state, playerId), reason }] : [],
		),
	}
}
export function hold(
	state: State,
	{ keep }: Deps,
	{ playerId, reason, on }: InputOf<'retention.hold'>,
): OutputOf<'retention.hold'> {
	state.entry(playerId)
	const known = state.holds.get(playerId)
	if (on === (known !== undefined))
		throw new Refusal(on ? 'This record is on hold already.' : 'This record is not on hold.')
	keep({
		kind: 'hold',
		follows: known?.recordId,
		value: { playerId, reason, on },
		about: playerId,
	})
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
	const clock = clocks(state, deps).find((one) => one.playerId === playerId)
	if (!clock || clock.keepUntil > today)
		throw new Refusal(
			`This record is to be kept until ${clock?.keepUntil ?? 'a day that cannot be computed'} ` +
				`by the rule of the clinic (${state.settings.retention.name}). Nothing was destroyed.`,
		)
	const ids = state.idsOf(playerId)
	const recordIds = ids.flatMap((id) => store.recordsAbout(id))
	const draftIds = [...state.drafts]
		.filter(([, draft]) => ids.includes(draft.playerId))
		.map(([draftId]) => draftId)
	const line: RegisterLine = {
		playerId,
		name: whole,
		from: clock.firstEntry,
		to: clock.lastEntry,
		destroyedOn: today,
		by: state.acts().name,
		rule: state.settings.retention.name,
		reason,
		recordIds,
	}
	store.destroy(recordIds, draftIds, () => {
		store.append({ kind: 'register', at: deps.now().toISOString(), value: line, does: 'destroy' })
	})
	for (const draftId of draftIds) state.memory.drafts.drop(draftId)
	state.memory.players.forget(ids)
	const older = store.backups()
	if (alsoBackups && older.length > 0) {
		// the new copy is made and checked first: there is a good one at every moment
		await store.backup('after-destruction')
		for (const { folder, file } of older) rmSync(join(folder, file), { force: true })
		store.audit({ function: 'destroy', objectRef: `backups:${older.length}` })
		return { records: recordIds.length, backupsThatStillHold: [] }
	}
	return { records: recordIds.length, backupsThatStillHold: older.map((one) => one.file) }
}
export function register({ store }: Deps): OutputOf<'retention.register'> {
	return { lines: destroyedLines(store).map(({ recordIds: _, ...line }) => line) }
}
export const destroyedLines = (store: Deps['store']): RegisterLine[] =>
	store.load(['register']).records.map((record) => registerLineSchema.parse(record.value))
