/** What is known of a pair owned, in few words. Pure. */
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import { amount } from '../../../shared/engine/words/en/format.ts'
import { dayInWords } from '../../parts/dates.ts'
import { verdictWords } from './decide/proposalWords.ts'

/** The room before the toes in a pair owned, mm; undefined where it could not be worked out. */
export const toeRoomMmIn = ({ footwear }: Pick<Assessment, 'footwear'>, id: string) =>
	footwear.current.find((pair) => pair.id === id)?.toeRoomMm

/**
 * '4.5 mm of room, replace by 1 February 2027'. Where its room is not known and nothing else speaks
 * against it, it is not judged: no *keep* rests on nothing.
 */
export function ownedInShort(
	assessment: Pick<Assessment, 'footwear' | 'prescription'>,
	id: string,
): string {
	const roomMm = toeRoomMmIn(assessment, id)
	const owned = assessment.prescription.owned.find((pair) => pair.id === id)
	if (roomMm === undefined && owned?.verdict === 'keep') return 'room not known yet'
	return [
		roomMm === undefined ? '' : `${amount(roomMm, 'mm')} of room`,
		owned && verdictWords[owned.verdict] + (owned.by ? ` by ${dayInWords(owned.by)}` : ''),
	]
		.filter(Boolean)
		.join(', ')
}
