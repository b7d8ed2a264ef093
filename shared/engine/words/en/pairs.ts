/** What is said of a pair that the player owns. */
import { sentence } from '../sentence.ts'
import { amount, day, number } from './format.ts'

/** Share of the usual life, where body mass shortens it: of no reader but the clinician. */
const byMass = (lifeShare: number): string =>
	lifeShare < 1 ? ` (life x ${number(lifeShare, 2)} for body mass: common practice, no source)` : ''
/** Replacement signs: common practice, no source. */
const damageSentences = {
	'pairs.studs-worn': sentence({
		clinician: () =>
			'Studs worn below half their height: replace the studs where they come out, else the pair.',
		player: () => 'The studs are worn down. If they come out, change the studs.',
	}),
	'pairs.stud-sharp': sentence({
		clinician: () => 'A sharp or chipped stud: to be smoothed or replaced.',
		player: () => 'A stud is sharp. It must be made smooth or changed.',
		coach: () => 'A stud is sharp: it must be made smooth or changed.',
	}),
	'pairs.stud-missing': sentence({
		clinician: () => 'A stud is missing: fit it, or have the sole checked for rocking.',
		player: () => 'A stud is missing. Put one in, or let us check if the sole rocks.',
	}),
	'pairs.sole-separated': sentence({
		clinician: () =>
			'Sole coming away from the upper: to be mended, or the pair replaced where it cannot be.',
		player: () => 'The sole comes off. It must be mended.',
		coach: () => 'The sole comes off: it must be mended.',
	}),
	'pairs.counter-collapsed': sentence({
		clinician: () => 'Heel counter collapsed: it no longer holds the heel.',
		player: () => 'The heel cup no longer holds your heel.',
		guardian: () => 'The heel cup no longer holds the heel.',
	}),
	'pairs.insole-board-split': sentence({
		clinician: () => 'Board under the liner split.',
		player: () => 'The board under the liner is split.',
	}),
	'pairs.upper-cracked': sentence({
		clinician: () => 'Upper cracked.',
		player: () => 'The upper is cracked.',
	}),
	'pairs.lining-worn': sentence({
		clinician: () => 'Heel lining worn through: to be patched, it blisters.',
		player: () =>
			'The lining at the heel is worn through. Have it patched, or you will get blisters.',
		guardian: () =>
			'The lining at the heel is worn through. Have it patched, or there will be blisters.',
	}),
	'pairs.heel-slips-sore': sentence({
		clinician: () =>
			'Heel slips: fit and counter first; no heel lock, which pulls a sore heel against the counter.',
		player: () => 'Your heel slips in them. Do not lace a sore heel tight. Let us look at the fit.',
		guardian: () =>
			'The heel slips in them. Do not lace a sore heel tight. Let us look at the fit.',
	}),
	'pairs.heel-slips': sentence({
		clinician: () => 'Heel slips: try the heel-lock lacing first, then fit and counter.',
		player: () => 'Your heel slips in them. Try the heel-lock lacing first.',
		guardian: () => 'The heel slips in them. Try the heel-lock lacing first.',
	}),
}
const watchSentences = {
	'pairs.worn-out': sentence<{ hours: number; lifeHours: number; lifeShare: number }>({
		clinician: ({ hours, lifeHours, lifeShare }) =>
			`Worn ${amount(hours, 'hours', 0)} of an expected ${number(lifeHours, 0)}` +
			`${byMass(lifeShare)}.`,
		player: () => 'This pair has been worn for its full life.',
	}),
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
		guardian: ({ months }) =>
			`This pair came ${amount(months, 'months', 0)} ago. Check it for wear.`,
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
	'pairs.outgrown-by': sentence<{
		leastMm: number
		on: string
		earliest?: string
		/** Nothing may be bought yet. */
		held?: boolean
	}>({
		clinician: ({ leastMm, on, earliest, held }) =>
			`By the growth forecast its toe room falls below ${amount(leastMm, 'mm')} about ${day(on)}` +
			`${earliest === undefined ? '' : ` (as early as ${day(earliest)} if growth is fast)`}` +
			`${held ? '' : ': plan the next pair'}.`,
		player: ({ on, earliest }) =>
			`If your feet grow as most do, this pair is too short from ${day(on)}.` +
			(earliest === undefined ? '' : ` It may be by ${day(earliest)}.`),
		guardian: ({ on, earliest }) =>
			`If the feet grow as most do, this pair is too short from ${day(on)}.` +
			(earliest === undefined ? '' : ` It may be by ${day(earliest)}.`),
	}),
}
/** Each part by its own code; the verdict stands before them. */
export const pairParts = { ...damageSentences, ...watchSentences }
/** Names of its numbers that are no measure of the visit. */
export const pairsReadings = {
	toeRoomMm: 'toe room',
}
