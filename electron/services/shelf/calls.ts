import type { Handlers } from '../../calls/handlers.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { learnPair, pairsToLearn } from './learning.ts'
import { exportShelf, getShelf, previewShelf, saveShelf } from './shelf.ts'

/** The calls about the shelf. */
export const shelfCalls = (memory: Pick<Memory, 'shelf' | 'players'>, deps: Deps) =>
	({
		'shelf.get': () => getShelf(memory),
		'shelf.save': (input) => saveShelf(memory, deps, input),
		'shelf.previewCsv': (input) => previewShelf(input),
		'shelf.toLearn': (input) => pairsToLearn(memory, deps, input),
		'shelf.learn': (input) => learnPair(memory, deps, input),
		'shelf.exportCsv': () => exportShelf(memory),
	}) satisfies Partial<Handlers>
