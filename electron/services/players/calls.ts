import type { Handlers } from '../../calls/handlers.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { playerCourse } from './course.ts'
import { mergePlayers, unmergePlayers } from './merging.ts'
import { openPlayer, savePlayer } from './players.ts'
import { searchPlayers } from './search.ts'
import { summaryOf } from './summary.ts'
import { keepTyped, openTyped } from './typed.ts'

/** The calls about players. */
export const playerCalls = (
	memory: Pick<Memory, 'clinic' | 'drafts' | 'holds' | 'outbox' | 'people' | 'players'>,
	deps: Deps,
) =>
	({
		'players.search': (input) => searchPlayers(memory, deps, input),
		'players.save': (input) => savePlayer(memory, deps, input),
		'players.open': (input) => openPlayer(memory, deps, input),
		'players.summary': (input) => summaryOf(memory, deps, input),
		'players.course': (input) => playerCourse(memory, deps, input),
		'players.typed': (input) => openTyped(memory, deps, input),
		'players.keepTyped': (input) => keepTyped(memory, deps, input),
		'players.merge': (input) => mergePlayers(memory, deps, input),
		'players.unmerge': (input) => unmergePlayers(memory, deps, input),
	}) satisfies Partial<Handlers>
