/** The answer of the feet in short words: what was decided by what, width, room in each pair. Pure. */
import { holdsOn } from '../../../../shared/engine/facts/held.ts'
import type {
	Assessment,
	OwnedPair,
	SizingResult,
	Span,
} from '../../../../shared/engine/findings/assessment.ts'
import { bothSides, rounded } from '../../../../shared/engine/visit/sides.ts'
import type { Part } from '../../../../shared/engine/words/en/parts.ts'
import { toeRoomMmIn } from '../ownedInShort.ts'

const shown = (value: number): string => String(rounded(value, 1))
export const spanInMm = ({ min, max }: Span): string => `${shown(min)} to ${shown(max)} mm`

const decides = { 'toe-length': 'heel to toe', 'ball-length': 'heel to ball' } as const
/** 'heel to toe, right'; empty where nothing decided yet. */
export function decidedWords({ decidedBy, decidedByFoot }: SizingResult): string {
	if (!decidedBy || !decidedByFoot) return ''
	return `${decides[decidedBy]}, ${decidedByFoot === 'equal' ? 'both alike' : decidedByFoot}`
}
const compared = [
	{ key: 'lengthMm', more: 'longer', equal: 'equally long' },
	{ key: 'widthMm', more: 'wider', equal: 'equally wide' },
] as const
/** 'right 2 mm longer, right 2 mm wider'; empty where one foot alone was measured. */
export const differenceWords = ({ left, right }: SizingResult): string =>
	compared
		.flatMap(({ key, more, equal }) => {
			const [one, other] = [left[key], right[key]]
			if (one === undefined || other === undefined) return []
			const byMm = rounded(Math.abs(other - one), 1)
			if (byMm === 0) return [equal]
			return [`${other > one ? 'right' : 'left'} ${shown(byMm)} mm ${more}`]
		})
		.join(', ')
/** 'left 95, right 97 mm'; empty where no width was measured. */
export function widthWords(sizing: SizingResult): string {
	const widths = bothSides.flatMap((side) => {
		const { widthMm } = sizing[side]
		return widthMm === undefined ? [] : [`${side} ${shown(widthMm)}`]
	})
	return widths.length === 0 ? '' : `${widths.join(', ')} mm`
}
/** What holds the width: sizes of the shelf for the young, letters for adults. */
export function widthHolds({ sizing }: Pick<Assessment, 'sizing'>): string {
	const young = sizing.findings.find(({ code }) => code === 'sizing.young-width')
	const shelf = young?.params.onShelf as { sizes: number; wideEnough: number } | undefined
	if (shelf) return `${shelf.wideEnough} of ${shelf.sizes} shelf sizes of this length hold it`
	const { jis, us } = sizing.fitting ?? {}
	return [jis && `${jis} (Japan)`, us && `${us} (US men)`].filter(Boolean).join(', ')
}
/** Why nothing is bought by these sizes; empty where something may be. */
export function notToBuyBy({
	sizing,
	prescription: { gate },
}: Pick<Assessment, 'sizing' | 'prescription'>): string {
	if (sizing.usableForBuying === false)
		return 'Not usable for buying: a foot was measured while acutely injured.'
	return holdsOn(gate, 'purchase').length > 0
		? 'Buying is held: these sizes are for the record, not to buy by.'
		: ''
}
/** What the length of a pair comes to, the worst first. */
const roomNames = {
	'owned.touches': 'toes touch the end',
	'owned.short-and-sore': 'too short',
	'owned.short': 'too short',
	'owned.much-too-long': 'far too long',
	'owned.too-long': 'too long',
	'owned.long': 'long',
	'owned.not-measured': 'not measured',
	'owned.room-near': 'within error of the band',
	'owned.room': 'within the band',
} as const
type RoomCode = keyof typeof roomNames
const worstFirst = Object.keys(roomNames) as readonly RoomCode[]
const isRoom = (code: string): code is RoomCode => Object.hasOwn(roomNames, code)

export interface PairRoom {
	id: string
	verdict: OwnedPair['verdict']
	by?: string | undefined
	/** '4.5 mm'; empty where it could not be worked out. */
	room: string
	says: string
	/** It does not hold the foot. */
	unfit: boolean
}
/** The room in each pair owned: what was outgrown first. */
export function pairRooms(assessment: Assessment): PairRoom[] {
	return assessment.prescription.owned
		.map(({ id, verdict, by, params }) => {
			const said = (params.said ?? []) as readonly Part[]
			const code = said.map((part) => part.code).find(isRoom) ?? 'owned.not-measured'
			const roomMm = toeRoomMmIn(assessment, id)
			return {
				place: worstFirst.indexOf(code),
				pair: {
					id,
					verdict,
					by,
					room: roomMm === undefined ? '' : `${shown(roomMm)} mm`,
					says: roomNames[code],
					unfit: worstFirst.indexOf(code) < worstFirst.indexOf('owned.long'),
				},
			}
		})
		.toSorted((one, other) => one.place - other.place)
		.map(({ pair }) => pair)
}
