/** What was found at the visit of the demo: to be put into a draft of any player and day. */
import { json } from '../demo.ts'

const {
	player: _,
	visitDate: __,
	format: ___,
	version: ____,
	...found
} = json('visit-adolescent.json')

export { found }
