/** What the sizing room says. */
import type { Side } from '../../visit/visit.ts'
import { sentence } from '../sentence.ts'
import { amount, count, day, number, plural } from './format.ts'

type Measure = 'lengthMm' | 'widthMm' | 'girthMm'
const changed: Record<Measure, { part: string; more: string; less: string }> = {
	lengthMm: { part: 'foot', more: 'longer', less: 'shorter' },
	widthMm: { part: 'ball of the foot', more: 'wider', less: 'narrower' },
	girthMm: { part: 'ball of the foot', more: 'larger around', less: 'smaller around' },
}
type Stance = 'standing' | 'seated'
const unlikeStance = (now: Stance): string =>
	`the feet were measured ${now} now and ${now === 'seated' ? 'standing' : 'seated'} then`
const readTwice = {
	heelToToeMm: 'foot length',
	heelToBallMm: 'heel-to-ball length',
	ballWidthMm: 'ball width',
	ballGirthMm: 'ball girth',
} as const
const adultsOf = { male: 'men', female: 'women' } as const

const whichFoot = (foot: Side | 'equal'): string =>
	foot === 'equal' ? 'both feet' : `the ${foot} foot`

export const sizingSentences = {
	'sizing.grew': sentence<{ side: Side; measure: Measure; byMm: number; since: string }>({
		clinician: ({ side, measure, byMm, since }) =>
			`The ${side} ${changed[measure].part} is ${amount(byMm, 'mm')} ${changed[measure].more} ` +
			`than on ${day(since)}: more than measuring error.`,
		player: ({ side, measure, byMm, since }) =>
			`Your ${side} foot is ${amount(byMm, 'mm')} ${changed[measure].more} than on ${day(since)}.`,
	}),
	'sizing.shrank': sentence<{ side: Side; measure: Measure; byMm: number; since: string }>({
		clinician: ({ side, measure, byMm, since }) =>
			`The ${side} ${changed[measure].part} is ${amount(byMm, 'mm')} ${changed[measure].less} ` +
			`than on ${day(since)}: more than measuring error. Measure again.`,
	}),
	'sizing.cannot-compare': sentence<{ since: string; now: Stance }>({
		clinician: ({ since, now }) =>
			`Foot length cannot be compared with ${day(since)}: ${unlikeStance(now)}.`,
	}),
	'sizing.unlike-stance': sentence<{ now: Stance }>({
		clinician: ({ now }) => unlikeStance(now),
	}),
	'sizing.no-limit': sentence<{ examiners: 'different' | 'unknown' }>({
		clinician: ({ examiners }) =>
			examiners === 'different'
				? 'another examiner measured then, and no limit is known for that'
				: 'the examiner was not recorded at both visits, and no limit is known for that',
	}),
	'sizing.wide': sentence<{ side: Side; sex: 'male' | 'female' }>({
		clinician: ({ side, sex }) =>
			`The ${side} foot is wide for its length compared with adult ${adultsOf[sex]}.`,
		player: ({ side }) => `Your ${side} foot is wide for its length.`,
	}),
	'sizing.narrow': sentence<{ side: Side; sex: 'male' | 'female' }>({
		clinician: ({ side, sex }) =>
			`The ${side} foot is narrow for its length compared with adult ${adultsOf[sex]}.`,
		player: ({ side }) => `Your ${side} foot is narrow for its length.`,
	}),
	'sizing.side-difference': sentence<{ longer: Side | 'equal'; byMm: number }>({
		clinician: ({ longer, byMm }) =>
			`The ${longer} foot is ${amount(byMm, 'mm')} longer. Fit the longer foot and check how the ` +
			'shorter one is held.',
		player: ({ longer, byMm }) =>
			`Your ${longer} foot is ${amount(byMm, 'mm')} longer. Fit your shoes to that foot.`,
	}),
	'sizing.one-foot': sentence<{ side: Side }>({
		clinician: ({ side }) =>
			`Only the ${side} foot was measured. Measure the other: the longer foot decides the size.`,
	}),
	'sizing.arch-length': sentence<{
		side: Side
		longerMm: number
		givenMm?: number
		wholly?: boolean
	}>({
		clinician: ({ side, longerMm, givenMm, wholly = true }) =>
			`The ball of the ${side} foot sits far forward: heel to ball asks for a shoe ` +
			`${amount(longerMm, 'mm')} longer than heel to toe. ` +
			(wholly || givenMm === undefined
				? 'The size follows heel to ball.'
				: `That is about half a size, so the size goes part of the way, ${amount(givenMm, 'mm')}.`),
		player: ({ side }) =>
			`The ball of your ${side} foot sits far forward. So you need a slightly longer shoe.`,
	}),
	'sizing.toe-length': sentence<{ foot: Side | 'equal' }>({
		clinician: ({ foot }) =>
			`The size follows heel to toe of ${whichFoot(foot)}: heel to ball asks for less than half a ` +
			'size more.',
	}),
	'sizing.check-inside': sentence<{
		spreadMm: number
		minMm: number
		maxMm: number
	}>({
		clinician: ({ spreadMm, minMm, maxMm }) =>
			`Labels differ by about ${amount(spreadMm, 'mm')} between makers. Check that the inside ` +
			`length is ${number(minMm)} to ${amount(maxMm, 'mm')}.`,
		player: ({ minMm, maxMm }) =>
			`Size labels differ between makers. Look for ${number(minMm)} to ${amount(maxMm, 'mm')} inside.`,
	}),
	'sizing.not-for-buying': sentence<{ side: Side }>({
		clinician: ({ side }) =>
			`The ${side} foot was measured while acutely injured: keep its size on record, buy nothing ` +
			'by it, and measure again when it has settled.',
		player: ({ side }) =>
			`Your ${side} foot is hurt and may be swollen. Buy no shoes by this size. We measure again ` +
			'when it is well.',
	}),
	'sizing.young-width': sentence<{
		widthMm: number
		onShelf?: { sizes: number; wideEnough: number; fromMm: number; toMm: number }
	}>({
		clinician: ({ widthMm, onShelf }) =>
			`No norm for width was found for players under 18: hold the ball width of ` +
			`${amount(widthMm, 'mm')} against the width inside the shoe.` +
			(onShelf === undefined
				? ''
				: ` On the shelf, ${number(onShelf.wideEnough)} of ` +
					`${count(onShelf.sizes, 'size', 'sizes')} of this length ` +
					`${plural(onShelf.wideEnough, 'is', 'are')} as wide (${number(onShelf.fromMm)} to ` +
					`${amount(onShelf.toMm, 'mm')}).`),
		player: ({ widthMm }) =>
			`Your foot is ${amount(widthMm, 'mm')} wide at the ball. The shoe must be as wide inside.`,
	}),
	'sizing.third-reading': sentence<{
		side: Side
		measure: keyof typeof readTwice
		gapMm: number
	}>({
		clinician: ({ side, measure, gapMm }) =>
			`Take a third reading of the ${side} ${readTwice[measure]}: the two differ by ` +
			`${amount(gapMm, 'mm')}.`,
	}),
	'sizing.seated': sentence<{ shorterMm: number }>({
		clinician: ({ shorterMm }) =>
			`The feet were measured seated and read up to about ${amount(shorterMm, 'mm')} shorter ` +
			'than standing. Measure again standing; do not compare these with standing readings.',
	}),
}
/** Names of its numbers that are no measure of the visit. */
export const sizingReadings = {
	atEarlierVisit: 'at the earlier visit',
	earlierVisit: 'earlier visit',
	widthForLengthZ: 'z of width for length',
	lengthFromBallMm: 'length from heel to ball',
	fitLengthMm: 'length to fit',
	leastToeRoomMm: 'toe room, least',
	mostToeRoomMm: 'toe room, most',
	firstReading: 'reading 1',
	secondReading: 'reading 2',
	stance: 'stance',
}
