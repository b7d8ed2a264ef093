/** What was seen of a pair on the foot. */
import type { Feature, PressurePlace, Sole, StudJoint } from '../../visit/terms.ts'
import { sentence } from '../sentence.ts'
import { amount, article, day, listed, number, ofSide, term, terms, together } from './format.ts'

type OnSide = { side: 'left' | 'right' | 'both' }
type Each<Term> = { left: readonly Term[]; right: readonly Term[] }

/** On both feet the same is said once. */
function eachFoot<Term extends string>(
	{ left, right }: Each<Term>,
	named: (places: readonly Term[]) => string,
): string {
	if (left.join() === right.join()) return `both feet, ${named(left)}`
	const feet = [
		left.length > 0 ? `left foot, ${named(left)}` : '',
		right.length > 0 ? `right foot, ${named(right)}` : '',
	]
	return feet.filter(Boolean).join('; ')
}
const presses = (places: readonly PressurePlace[]): string => terms(places, 'and')
const plainPlaces: Readonly<Record<PressurePlace, string>> = {
	'great-toe': 'big toe',
	'small-toes': 'small toes',
	'inner-side-of-ball': 'big toe joint',
	'outer-side-of-ball': 'little toe joint',
	instep: 'top of the foot',
	arch: 'arch',
	heel: 'heel',
	'ankle-bones': 'ankle bone',
}
const plain = (places: readonly PressurePlace[]): string =>
	listed(places.map((place) => plainPlaces[place]))
const jointNames: Readonly<Record<StudJoint, string>> = {
	'first-joint': 'first metatarsophalangeal joint',
	'fifth-joint': 'fifth metatarsophalangeal joint',
	'heel-centre': 'centre of the heel',
}
const plainJoints: Readonly<Record<StudJoint, string>> = {
	'first-joint': 'big toe joint',
	'fifth-joint': 'little toe joint',
	'heel-centre': 'heel',
}
const onSide = ({ side }: OnSide): string => ofSide(side, 'foot', 'feet')

/** They stand inside the verdict on a pair. */
export const onFootParts = {
	'onfoot.too-tight': sentence<OnSide & { atRisk: boolean }>({
		clinician: ({ atRisk, ...side }) =>
			`Too tight across the ball, ${onSide(side)}` +
			`${atRisk ? ', on a foot whose skin is at risk' : ''}.`,
		player: () => 'It is too tight across the wide part of your foot.',
		guardian: () => 'It is too tight across the wide part of the foot.',
	}),
	'onfoot.loose': sentence<OnSide>({
		clinician: (side) =>
			`Loose across the ball, ${onSide(side)}: a thicker sock or liner and lacing first.`,
		player: () => 'It is loose on your foot. Try a thicker sock first, and lace it well.',
		guardian: () => 'It is loose on the foot. Try a thicker sock first, and lace it well.',
	}),
	'onfoot.presses': sentence<{ places: Each<PressurePlace> }>({
		clinician: ({ places }) =>
			`Presses: ${eachFoot(places, presses)}. Put it right before it is worn for a whole session.`,
		player: ({ places }) =>
			`It presses: ${eachFoot(places, plain)}. We change that first. Do not play in it with a sore spot.`,
		guardian: ({ places }) =>
			`It presses: ${eachFoot(places, plain)}. We change that first. It is not played in with a sore spot.`,
	}),
	'onfoot.presses-at-risk': sentence<{ places: Each<PressurePlace> }>({
		clinician: ({ places }) =>
			`Presses on a foot whose skin is at risk: ${eachFoot(places, presses)}. Not worn in.`,
		player: ({ places }) =>
			`It presses: ${eachFoot(places, plain)}. The skin of your foot needs care.`,
		guardian: ({ places }) =>
			`It presses: ${eachFoot(places, plain)}. The skin of the foot needs care.`,
	}),
	'onfoot.stud-under': sentence<{ joints: Each<StudJoint> }>({
		clinician: ({ joints }) =>
			`A stud stands under a joint at risk: ` +
			`${eachFoot(joints, (under) => listed(under.map((one) => jointNames[one])))}. ` +
			'Have it lowered or taken out.',
		player: ({ joints }) =>
			`A stud stands under a sore part: ` +
			`${eachFoot(joints, (under) => listed(under.map((one) => plainJoints[one])))}. ` +
			'Have it made lower or taken out.',
	}),
	'onfoot.bends-behind': sentence<OnSide>({
		clinician: (side) => `Bends behind the ball, ${onSide(side)}: not where the foot bends.`,
		player: () => 'It does not bend where your foot bends.',
		guardian: () => 'It does not bend where the foot bends.',
	}),
	'onfoot.bends-hardly': sentence<OnSide>({
		clinician: (side) => `Hardly bends yet, ${onSide(side)}: look again once it is worn in.`,
		player: () => 'It is still stiff. Wear it a little at a time at first.',
	}),
	'onfoot.by-label': sentence({
		clinician: () => 'Its inside length is that of a label: measure it, or the room standing.',
		player: () => 'We still have to measure how long it is inside.',
	}),
	'onfoot.rooms-differ': sentence<OnSide & { byLengthMm: number; standingMm: number }>({
		clinician: ({ byLengthMm, standingMm, ...side }) =>
			`Room by inside length ${amount(byLengthMm, 'mm')}, standing ${amount(standingMm, 'mm')} ` +
			`(${onSide(side)}): they cannot both be right. Measure both again; the lesser counts.`,
	}),
	'onfoot.comfort-fell': sentence<{ first: number; later: number; sessions: number }>({
		clinician: ({ first, later, sessions }) =>
			`Comfort ${number(first)} of 10 at first and ${number(later)} after ` +
			`${amount(sessions, 'sessions', 0)}: find what presses.`,
		player: ({ first, later }) =>
			`It felt like ${number(first)} of 10 at first and is ${number(later)} now. Let us find why.`,
		guardian: ({ first, later }) =>
			`It felt like ${number(first)} of 10 at first and is ${number(later)} now. We look for why.`,
	}),
}
/** What was asked of the pair, and when. */
interface Answer extends Readonly<Record<string, unknown>> {
	pair: string
	/** The day of the prescription that asked for it; absent where it is today's. */
	on?: string
}
const asOf = ({ on }: Answer): string =>
	on === undefined ? 'what is asked today' : `what was asked on ${day(on)}`
interface Missed extends Answer {
	length?: { insideLengthMm: number; leastMm: number; mostMm: number }
	sole?: { is: Sole; asked: Sole }
	missing: readonly Feature[]
	against: readonly Feature[]
}
function missedWords({ length, sole, missing, against }: Missed): string {
	return listed(
		[
			length &&
				`inside ${amount(length.insideLengthMm, 'mm')}, not ${number(length.leastMm)} to ` +
					amount(length.mostMm, 'mm'),
			sole && `${article(term(sole.is))} sole, not ${term(sole.asked)}`,
			missing.length > 0 && `without ${terms(missing, 'or')}`,
			against.length > 0 && `with ${terms(against, 'and')}`,
		].filter((one) => typeof one === 'string'),
	)
}
export const onFootSentences = {
	'onfoot.as-asked': sentence<Answer & { met: readonly Feature[] }>({
		clinician: (answer) =>
			together(
				`${answer.pair}: as far as looked at, it is ${asOf(answer)}.`,
				answer.met.length > 0 && `Seen on the foot: ${terms(answer.met, 'and')}.`,
			),
	}),
	'onfoot.not-as-asked': sentence<Missed>({
		clinician: (answer) => `Other than ${asOf(answer)} (${answer.pair}): ${missedWords(answer)}.`,
	}),
}
