import type { Handlers } from '../../calls/handlers.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { choose, look, placesNow } from './choosing.ts'
import { makeFolder } from './new-folder.ts'
import { mustBeAllowed } from './rights.ts'

/** The calls by which a folder or a file of this PC is chosen. */
export const placeCalls = (memory: Memory, deps: Deps) =>
	({
		'places.look': (input) => {
			mustBeAllowed(memory, deps, input.purpose)
			return look(deps, input)
		},
		'places.newFolder': async ({ purpose, at, name }) => {
			mustBeAllowed(memory, deps, purpose)
			return makeFolder(await placesNow(deps), at, name)
		},
		'places.choose': (input) => {
			mustBeAllowed(memory, deps, input.purpose)
			return choose(deps, input)
		},
	}) satisfies Partial<Handlers>
