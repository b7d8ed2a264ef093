import type { Handlers } from '../../calls/handlers.ts'
import type { Deps } from '../records/deps.ts'
import type { State } from '../records/state.ts'
import { exportShelf, getShelf, previewShelf, saveShelf } from './shelf.ts'

/** The calls about the shelf. */
export const shelfCalls = (state: State, deps: Deps) =>
	({
		'shelf.get': () => getShelf(state),
		'shelf.save': (input) => saveShelf(state, deps, input),
		'shelf.previewCsv': (input) => previewShelf(input),
		'shelf.exportCsv': () => exportShelf(state),
	}) satisfies Partial<Handlers>
