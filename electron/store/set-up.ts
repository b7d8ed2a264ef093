/** The first moment of a store: its keys are made. */

import { lockUp } from './forgetting.ts'
import type { Parts } from './parts.ts'
import { Said } from './said.ts'

/**
 * Makes the data key and its two slots; what `fill` writes belongs to the same transaction.
 * @param settle gives the new records their name and author
 * @returns the recovery key to print; it is kept nowhere
 * @throws Error in words where the records are set up already
 */
export async function setUp(
	parts: Parts,
	passphrase: string,
	settle: () => void,
	fill: () => void = () => {},
): Promise<string> {
	const { database, keyring, slots } = parts
	const refuseSecond = () => {
		if (slots.isSetUp)
			throw new Said('These records are set up already. Unlock them instead.', {
				why: 'people.set-up-already',
			})
	}
	refuseSecond()
	const fresh = await keyring.makeFresh(passphrase)
	database.together(() => {
		// a second set-up may have finished during the stretching: its key is in use and stays
		refuseSecond()
		keyring.begin(fresh)
		try {
			settle()
			fill()
		} catch (error) {
			lockUp(parts)
			throw error
		}
	})
	return fresh.printed
}
