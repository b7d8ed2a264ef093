/** Who wrote a record that comes home: it must be whom it says, by the signature. */
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { type Arrival, isOwn, publicKeyOf } from './arrival.ts'
import type { Trouble } from './check-record.ts'

const refused = (because: string): Trouble => ({ outcome: 'refused', because })

export function authorTrouble(arrival: Arrival, record: Carried): Trouble | undefined {
	const { deps, keys, seen } = arrival
	const { store } = deps
	if (record.origin === store.origin)
		return refused('says that this PC wrote it, but it is not in the records of this PC')
	// that it is good holds for ever; anything else is asked again
	const word = seen?.get(record)?.isSigned ? 'good' : store.signatureOf(record, keys)
	switch (word) {
		case 'good':
			return undefined
		case 'wrong':
			return refused('bears a signature that is not of the installation it names')
		case 'unknown-author':
			return refused('was written by an installation that neither these records nor the file names')
		case 'unsigned':
			return unsignedTrouble(arrival, record)
	}
}
/** Program 0.1.0 signed nothing: its records come only with the answer to a pack that it made. */
function unsignedTrouble(
	{ unsigned, deps: { store } }: Arrival,
	{ origin, number = 0 }: Carried,
): Trouble | undefined {
	if (!unsigned || number > 0 || publicKeyOf(store, origin) !== undefined)
		return refused('bears no signature of the installation that wrote it')
	if (isOwn(store, origin))
		return refused('says that this PC wrote it, but it is not in the records of this PC')
	return undefined
}
