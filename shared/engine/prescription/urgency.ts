/** How urgent the actions of the gate are. */
import { type Action, actions } from '../findings/screening-result.ts'

/** The most urgent of several actions; none: proceed. */
export const mostUrgent = (given: readonly Action[]): Action =>
	given.reduce<Action>(
		(most, action) => (actions.indexOf(action) > actions.indexOf(most) ? action : most),
		'proceed',
	)
