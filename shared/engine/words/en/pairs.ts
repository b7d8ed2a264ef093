/** What is said of a pair that the player owns. */
import { sentence } from '../sentence.ts'
import { amount, day, number, together } from './format.ts'
import { type Part, spokenParts } from './parts.ts'

/** Share of the usual life, where body mass shortens it: of no reader but the clinician. */
const byMass = (lifeShare: number): string =>
	lifeShare < 1 ? ` (life x ${number(lifeShare, 2)} for body mass: common practice, no source)` : ''
const verdictSentences = {
	'pairs.worn-out': sentence<{ hours: number; lifeHours: number; lifeShare: number }>({
		clinician: ({ hours, lifeHours, lifeShare }) =>
			`Worn ${amount(hours, 'hours', 0)} of an expected ${number(lifeHours, 0)}: ` +
			`replace${byMass(lifeShare)}.`,
		player: () => 'This pair has been worn for its full life. Get a new one.',
	}),
	'pairs.not-measured': sentence<{ lacks: 'inside-length' | 'foot-length' }>({
		clinician: ({ lacks }) =>
			lacks === 'inside-length' ? 'Inside length not measured.' : 'Foot length not measured.',
		player: () => 'We have not measured their toe room yet.',
	}),
	'pairs.too-short': sentence<{ shortMm: number; withSock: boolean }>({
		clinician: ({ shortMm, withSock }) =>
			`Inside it is ${amount(shortMm, 'mm')} shorter than the ` +
			`foot${withSock ? ' with its sock' : ''}: too short, replace.`,
		player: () => 'They are shorter than your foot. Do not wear them. Get a longer pair.',
	}),
	'pairs.outgrown': sentence<{ toeRoomMm: number; leastMm: number }>({
		clinician: ({ toeRoomMm, leastMm }) =>
			`Toe room ${amount(toeRoomMm, 'mm')} is below ${amount(leastMm, 'mm')}: outgrown, replace.`,
		player: () => 'You have outgrown them. Get a longer pair.',
	}),
	'pairs.tight': sentence<{ toeRoomMm: number }>({
		clinician: ({ toeRoomMm }) => `Toe room ${amount(toeRoomMm, 'mm')} is tight.`,
		player: () => 'There is too little room in front of your toes.',
	}),
	'pairs.loose': sentence<{ toeRoomMm: number }>({
		clinician: ({ toeRoomMm }) => `Toe room ${amount(toeRoomMm, 'mm')} is loose.`,
		player: () => 'There is too much room in front of your toes.',
	}),
	'pairs.room': sentence<{ toeRoomMm: number }>({
		clinician: ({ toeRoomMm }) => `Toe room ${amount(toeRoomMm, 'mm')}.`,
		player: ({ toeRoomMm }) => `You have ${amount(toeRoomMm, 'mm')} in front of your toes.`,
	}),
}
/** Replacement signs: common practice, no source. */
const damageSentences = {
	'pairs.studs-worn': sentence({
		clinician: () =>
			'Studs worn below half their height: replace the studs where they come out, else the pair.',
		player: () =>
			'The studs are worn down. Change the studs if they come out. Else get a new pair.',
	}),
	'pairs.stud-sharp': sentence({
		clinician: () =>
			'A sharp or chipped stud: do not play in them until it is smoothed or replaced.',
		player: () => 'A stud is sharp. Do not play in them until it is made smooth or changed.',
		coach: () => 'A stud is sharp: not to be played in until it is made smooth or changed.',
	}),
	'pairs.stud-missing': sentence({
		clinician: () => 'A stud is missing: fit it, or have the sole checked for rocking.',
		player: () => 'A stud is missing. Put one in, or let us check if the sole rocks.',
	}),
	'pairs.sole-separated': sentence({
		clinician: () => 'Sole coming away from the upper: replace.',
		player: () => 'The sole comes off. Get a new pair.',
	}),
	'pairs.counter-collapsed': sentence({
		clinician: () => 'Heel counter collapsed: it no longer holds the heel; replace.',
		player: () => 'The heel cup no longer holds your heel. Get a new pair.',
	}),
	'pairs.insole-board-split': sentence({
		clinician: () => 'Board under the liner split: replace.',
		player: () => 'The board under the liner is split. Get a new pair.',
	}),
	'pairs.upper-cracked': sentence({
		clinician: () => 'Upper cracked: replace.',
		player: () => 'The upper is cracked. Get a new pair.',
	}),
	'pairs.lining-worn': sentence({
		clinician: () => 'Heel lining worn through: patch it or replace, it blisters.',
		player: () =>
			'The lining at the heel is worn through. Have it patched, or you will get blisters.',
	}),
	'pairs.heel-slips': sentence({
		clinician: () => 'Heel slips: try the heel-lock lacing first, then fit and counter.',
		player: () => 'Your heel slips in them. Try the heel-lock lacing first.',
	}),
}
const watchSentences = {
	'pairs.near-its-end': sentence<{ hours: number; lifeShare: number }>({
		clinician: ({ hours, lifeShare }) =>
			`Worn ${amount(hours, 'hours', 0)}: check studs, counter and sole${byMass(lifeShare)}.`,
		player: () => 'This pair has been worn a lot. Check the studs, the heel cup and the sole.',
	}),
	'pairs.owned-for': sentence<{ months: number }>({
		clinician: ({ months }) =>
			`Owned for ${amount(months, 'months', 0)}: check it as for a worn pair.`,
		player: ({ months }) =>
			`You have had this pair for ${amount(months, 'months', 0)}. Check it for wear.`,
	}),
	'pairs.low-offset': sentence<{
		offsetMm: number
		soughtMm: number
		raiseMm: number
		limitMm: number
		withinLimit: boolean
	}>({
		clinician: ({ offsetMm, soughtMm, raiseMm, limitMm, withinLimit }) =>
			`Offset ${amount(offsetMm, 'mm')} is below the ${amount(soughtMm, 'mm')} sought` +
			(withinLimit
				? `: ${amount(raiseMm, 'mm')} of heel raise inside would make it up.`
				: `; making it up needs ${amount(raiseMm, 'mm')} of heel raise, above the ` +
					`${amount(limitMm, 'mm')} limit in use.`),
		player: () => 'The heel of this pair is lower than your ankle needs.',
	}),
	'pairs.not-broken-in': sentence<{ minutes: number }>({
		clinician: ({ minutes }) =>
			`Not broken in: no match before ${amount(minutes, 'minutes')} of training without a sore ` +
			'spot.',
		player: ({ minutes }) =>
			`First train in them for ${amount(minutes, 'minutes')}. Play a match in them only if no spot ` +
			'is sore.',
		coach: ({ minutes }) =>
			`New: no match before ${amount(minutes, 'minutes')} of training in them.`,
	}),
	'pairs.outgrown-by': sentence<{ leastMm: number; on: string; earliest?: string }>({
		clinician: ({ leastMm, on, earliest }) =>
			`By the growth forecast its toe room falls below ${amount(leastMm, 'mm')} about ${day(on)}` +
			`${earliest === undefined ? '' : ` (as early as ${day(earliest)} if growth is fast)`}: plan ` +
			'the next pair.',
		player: ({ on, earliest }) =>
			`If your feet grow as most do, get the next pair by ${day(on)}.` +
			(earliest === undefined ? '' : ` You may need it by ${day(earliest)}.`),
	}),
}
const partSentences = { ...verdictSentences, ...damageSentences, ...watchSentences }
/** The verdict of a pair, then what else is to be watched: each part by its own code. */
type Whole = { said: readonly Part[] }
/** `pair` as the player calls it. */
type WholeOfPair = Whole & { pair: string }
const whole = ({ said }: Whole, reader: 'clinician' | 'player' | 'coach'): string =>
	together(...spokenParts(partSentences, said, reader))
const named = (pair: WholeOfPair, reader: 'clinician' | 'player' | 'coach'): string => {
	const words = whole(pair, reader)
	return words === '' ? '' : `${pair.pair}: ${words}`
}
export const pairsSentences = {
	...partSentences,
	'pairs.pair': sentence<Whole>({
		clinician: (pair) => whole(pair, 'clinician'),
		player: (pair) => whole(pair, 'player'),
		coach: (pair) => whole(pair, 'coach'),
	}),
	'footwear.pair': sentence<WholeOfPair>({
		clinician: (pair) => named(pair, 'clinician'),
		player: (pair) => named(pair, 'player'),
		coach: (pair) => named(pair, 'coach'),
	}),
}
/** Names of its numbers that are no measure of the visit. */
export const pairsReadings = {
	toeRoomMm: 'toe room',
}
