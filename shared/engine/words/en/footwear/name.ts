/** Names of changes to a boot and of lacings. */
import { sentence } from '../../sentence.ts'

/** A name; in plainer words for the player where the trade's are not. */
export const nameOf = (clinician: string, player = clinician) =>
	sentence({ clinician: () => clinician, player: () => player })
