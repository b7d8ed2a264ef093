/** Players whose details were changed in two places: what only one of them changed is taken. */
import { joinFields } from '../../../shared/desk/outreach/heads.ts'
import { playerSchema } from '../../../shared/engine/visit/visit.ts'
import type { Store } from '../../store/store.ts'
import type { Memory } from './memory.ts'
import { openerOf } from './open.ts'

/** Joins field by field, of the players that stand at more than one version, those not joined yet. */
export function joinPlayers({ players, outreach }: Memory, store: Store): void {
	const { openAbout } = openerOf(store)
	for (const playerId of players.toJoin()) {
		const versions = openAbout('player', playerId).records
		const { value, heads } = joinFields(versions, ({ player }) => player, outreach.joined)
		const read = playerSchema.safeParse(value)
		const head = heads.at(-1)
		if (read.success && head !== undefined) players.showJoined(playerId, read.data, head)
	}
}
