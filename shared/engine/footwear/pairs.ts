/** The verdict on a pair the player owns as outside callers read it: keep, change or replace. */
import type { CurrentPair, ToeRoomForecast } from '../findings/assessment.ts'
import type { OwnedVerdict } from '../findings/prescription-result.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Pair } from '../visit/visit.ts'
import type { Part } from '../words/en/parts.ts'
import { type Statement, state } from '../words/statement.ts'
import { type PairPicture, pictureOf } from './pair/ground.ts'
import { forecastOf, replaceBetween } from './pair/growth.ts'
import { toeRoomIn } from './pair/room.ts'
import { groundsOf, type PairVerdict, verdictOf } from './pair/verdict.ts'

/** A pair as it is judged now: the verdict and what else is to be watched, by codes. */
export type JudgedPair = CurrentPair & Statement & { params: { said: Part[] } }
/** What the verdict of the prescription is called here. */
const asCurrent: Readonly<Record<OwnedVerdict, CurrentPair['verdict']>> = {
	keep: 'keep',
	'training-only': 'keep',
	modify: 'change',
	replace: 'replace',
	'stop-wearing': 'replace',
}
const currentVerdict = ({ verdict, unknownRoom }: PairVerdict): CurrentPair['verdict'] =>
	unknownRoom && asCurrent[verdict] === 'keep' ? 'unknown' : asCurrent[verdict]

/** A pair against the picture of its player; the verdict agrees with that of the prescription. */
export function judgedPair(pair: Pair, picture: PairPicture, protocol: Protocol): JudgedPair {
	const judged = verdictOf(groundsOf(pair, picture, protocol), picture)
	const { said } = judged
	const [, , ...others] = said
	const forecast = forecastOf(pair, picture)
	const replaceBy = forecast?.runsOutOn
	return present({
		id: pair.id,
		toeRoomMm: toeRoomIn(pair, picture),
		verdict: currentVerdict(judged),
		...state('pairs.pair', { said }),
		params: { said },
		reasons:
			others.length > 0
				? others.map((part) => state('pairs.pair', { said: [part] }).says)
				: undefined,
		replaceBy,
		replaceBetween: replaceBy === undefined ? undefined : replaceBetween(forecast),
	})
}
/** What else a pair is judged by, where known. */
interface PairMore {
	visitDate?: string
	/** the growth room's forecast of this pair's toe room */
	toeRoom?: ToeRoomForecast | undefined
	/** share of the usual life, by body mass */
	lifeShare?: number
}
/**
 * The verdict on a pair in use, with its toe room in mm (inside length less the length to fit and
 * the sock). With a foot-length forecast also the date from which the toe room is expected to fall
 * below the limit. @internal
 */
export const judgePair = (
	pair: Pair,
	fitLengthMm: number | undefined,
	sockMm: number,
	adult: boolean,
	protocol: Protocol,
	{ visitDate, toeRoom, lifeShare = 1 }: PairMore = {},
): JudgedPair =>
	judgedPair(
		pair,
		pictureOf(
			{
				visitDate,
				adult,
				fitMm: fitLengthMm,
				sockMm,
				lifeShare,
				forecasts: toeRoom ? [toeRoom] : [],
			},
			protocol,
		),
		protocol,
	)
