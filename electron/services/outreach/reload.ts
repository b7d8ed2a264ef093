/** The memory of the services after records came or went behind their back. */
import { loadState } from '../records/load.ts'
import type { Deps, State } from '../records/state.ts'

/** Fills the state anew from the store; whoever works here goes on. */
export function reload(state: State, deps: Deps): void {
	const personId = state.person?.personId
	loadState(state, deps)
	state.person = personId === undefined ? undefined : state.people.get(personId)
}
