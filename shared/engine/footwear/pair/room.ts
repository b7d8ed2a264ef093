/** The length of an owned pair against the band of toe room that the player is told. */
import { shoeKindOf } from '../../facts/toe-room.ts'
import type { Span } from '../../findings/assessment.ts'
import { addDays } from '../../plain/days.ts'
import { present } from '../../plain/present.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { rounded } from '../../visit/sides.ts'
import type { Pair } from '../../visit/visit.ts'
import { state } from '../../words/statement.ts'
import { isUncomfortable } from './comfort.ts'
import type { Ground, PairPicture } from './ground.ts'
import { leastStanding, type RoomOnFoot } from './standing.ts'

/** Toe room by the figures, mm: inside length less the length to fit and the sock. */
export const roomByLength = (pair: Pair, { fitMm, sockMm }: PairPicture): number | undefined =>
	pair.insideLengthMm === undefined || fitMm === undefined
		? undefined
		: rounded(pair.insideLengthMm - fitMm - sockMm, 4)
/** Toe room of a pair in mm: by the figures, or as it was seen standing where that is less. */
export function toeRoomIn(pair: Pair, picture: PairPicture): number | undefined {
	const known = [roomByLength(pair, picture), leastStanding(pair)?.roomMm].filter(isKnown)
	return known.length === 0 ? undefined : Math.min(...known)
}
const isKnown = (value: number | undefined): value is number => value !== undefined
/** Where the room that was seen is what decides. */
function seenOn(pair: Pair, picture: PairPicture): RoomOnFoot['side'] | undefined {
	const standing = leastStanding(pair)
	const byLength = roomByLength(pair, picture)
	if (standing === undefined) return undefined
	return byLength === undefined || standing.roomMm < byLength ? standing.side : undefined
}
/** The day some weeks after the visit; undefined where the day of the visit is not known. */
export const weeksLater = ({ visitDate }: PairPicture, weeks: number): string | undefined =>
	visitDate === undefined ? undefined : addDays(visitDate, 7 * weeks)

interface Room {
	pair: Pair
	picture: PairPicture
	protocol: Protocol
	/** By the length to fit, mm. */
	roomMm: number
	band: Span
}
const shown = ({ pair, picture, roomMm, band }: Room) => ({
	toeRoomMm: rounded(roomMm, 1),
	leastMm: band.min,
	mostMm: band.max,
	...present({ seen: seenOn(pair, picture) }),
})
/** What a pair that is short of room would make worse. */
const suffers = ({ pair, picture }: Room): boolean =>
	pair.hurts === true || picture.nailsAreSore || picture.footAtRisk

/** Before growth takes what is left, else soon. */
function replaceBy({ pair, picture, protocol }: Room): string | undefined {
	const forecast = picture.forecasts.find(({ id }) => id === pair.id)
	const soon = weeksLater(picture, protocol.value('footwear.ownedShortWeeks'))
	if (forecast?.state !== 'runs-out') return soon
	return forecast.earliest ?? forecast.runsOutOn ?? soon
}
function shortGround(room: Room, beyondError: boolean): Ground {
	const { picture, protocol } = room
	const sore = suffers(room)
	if (sore && beyondError)
		return { verdict: 'stop-wearing', statement: state('owned.short-and-sore', shown(room)) }
	const soon = weeksLater(picture, protocol.value('footwear.ownedShortWeeks'))
	return {
		verdict: 'replace',
		statement: state('owned.short', { ...shown(room), swollen: picture.swollen }),
		...present({ by: sore ? soon : replaceBy(room) }),
	}
}
function longGround(room: Room): Ground {
	const { picture, protocol, roomMm, band } = room
	const beyondMm = roomMm - band.max
	if (beyondMm > protocol.value('footwear.ownedMuchTooLongMm'))
		return { verdict: 'stop-wearing', statement: state('owned.much-too-long', shown(room)) }
	if (beyondMm > protocol.value('footwear.ownedLongMendMm'))
		return {
			verdict: 'replace',
			statement: state('owned.too-long', shown(room)),
			...present({ by: weeksLater(picture, protocol.value('footwear.ownedReplaceWeeks')) }),
		}
	return { verdict: 'modify', statement: state('owned.long', shown(room)), work: 'fill-length' }
}
function bandGround(room: Room): Ground {
	const { pair, picture, protocol, roomMm, band } = room
	const errorMm = protocol.value('sizing.bandErrorMm')
	if (roomMm < band.min - errorMm) return shortGround(room, true)
	if (roomMm > band.max + errorMm) return longGround(room)
	const short = roomMm < band.min
	// what error alone would excuse is not excused where the foot complains
	if (short && (suffers(room) || isUncomfortable(pair, picture, protocol)))
		return shortGround(room, false)
	return short || roomMm > band.max
		? { verdict: 'keep', statement: state('owned.room-near', shown(room)) }
		: { verdict: 'keep', statement: state('owned.room', shown(room)) }
}
function touchesGround(pair: Pair, picture: PairPicture, protocol: Protocol): Ground | undefined {
	const { toesMm = picture.fitMm, sockMm } = picture
	const byLength = roomByLength(pair, { ...picture, fitMm: toesMm })
	const known = [byLength, leastStanding(pair)?.roomMm].filter(isKnown)
	const beforeToesMm = Math.min(...known)
	if (beforeToesMm > protocol.value('footwear.ownedTouchesMm')) return undefined
	return {
		verdict: 'stop-wearing',
		statement: state('owned.touches', {
			shortMm: Math.max(0, rounded(-beforeToesMm, 1)),
			withSock: sockMm > 0,
		}),
	}
}
/** What the length of a pair comes to: one ground. */
export function roomGround(pair: Pair, picture: PairPicture, protocol: Protocol): Ground {
	const roomMm = toeRoomIn(pair, picture)
	if (roomMm === undefined)
		return {
			verdict: 'keep',
			unknownRoom: true,
			statement: state('owned.not-measured', {
				lacks: pair.insideLengthMm === undefined ? 'inside-length' : 'foot-length',
			}),
		}
	const band = picture.bands[shoeKindOf(pair)].span
	return (
		touchesGround(pair, picture, protocol) ?? bandGround({ pair, picture, protocol, roomMm, band })
	)
}
