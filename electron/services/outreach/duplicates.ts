/** Players who came home, and whom of those here they may be. */

import type { Card } from '../../../shared/contract.ts'
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { likeness } from '../players/names.ts'
import type { Deps } from '../records/deps.ts'
import type { Duplicate } from './pack-log.ts'
import { versionsAbout } from './versions.ts'

/** The last known details of the players whose records came. */
export function playersOf(deps: Pick<Deps, 'openAbout'>, records: readonly Carried[]): Card[] {
	const ids = records.flatMap(({ kind, about }) =>
		kind === 'player' && about !== undefined ? [about] : [],
	)
	return [...new Set(ids)].flatMap((playerId) => {
		const last = versionsAbout(deps, 'player', playerId).at(-1)
		if (!last) return []
		const { givenName, familyName, latinName, birthDate, sex } = last.value.player
		const latin = latinName && { latinName }
		return [{ playerId, givenName, familyName, ...latin, birthDate, sex, openDraft: false }]
	})
}
/** Pairs that a person should look at; nobody is merged by itself. */
export function duplicatesOf(newcomers: readonly Card[], all: readonly Card[]): Duplicate[] {
	return newcomers.flatMap((card) =>
		all.flatMap((other) => {
			const why = other.playerId === card.playerId ? undefined : likeness(card, other)
			if (!why) return []
			const { playerId } = card
			return [
				{ playerId, name: fullName(card), like: other.playerId, likeName: fullName(other), why },
			]
		}),
	)
}
