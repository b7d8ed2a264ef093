/**
 * What is said of changes to a boot and of lacing: `work.` and the id of the row; with `.name` and
 * `.limits` what it is called and where it ends. Trade practice, wording of our own.
 */
import type { PairRole } from '../../visit/terms.ts'
import { alsoTo, sentence } from '../sentence.ts'
import { lacingSentences } from './footwear/lacing.ts'
import { nameOf } from './footwear/name.ts'
import { amount, capital, number } from './format.ts'

interface Raised {
	pair?: string
	role?: PairRole
	leftMm: number
	rightMm: number
	leftBy: keyof typeof madeWords
	rightBy: keyof typeof madeWords
}
const madeWords = {
	none: '',
	wedge: ' under the liner',
	insert: ' in the insert',
	outsole: ' on the outsole',
}
const ofRole: Record<PairRole, string> = {
	match: 'the next pair for matches',
	training: 'the next pair for training',
	running: 'the next pair for running',
	everyday: 'the next pair for every day',
}
const raisedIn = ({ pair, role, leftMm, rightMm, leftBy, rightBy }: Raised): string => {
	const left = `${amount(leftMm, 'mm')}${madeWords[leftBy]}`
	const right = `${amount(rightMm, 'mm')}${madeWords[rightBy]}`
	const heights = left === right ? `${left} on both sides` : `left ${left}, right ${right}`
	return `${role ? ofRole[role] : (pair ?? '')}: ${heights}`
}
const raisedFor = (raised: Raised): string => `${capital(raisedIn(raised))}.`
const heelRaise = {
	'work.heel-raise.name': nameOf('Heel raise'),
	'work.heel-raise': alsoTo(
		sentence<{ raiseMm: number }>({
			clinician: ({ raiseMm }) =>
				`${amount(raiseMm, 'mm')} of heel raise under the liner of both shoes, the same in boots ` +
				'and trainers.',
			player: ({ raiseMm }) =>
				`Wear a ${amount(raiseMm, 'mm')} heel raise under the liner of both shoes. Wear the same ` +
				'in boots and trainers.',
		}),
		'doctor',
	),
	/** What is raised in which pair, side by side: legs of two lengths are not made the same. */
	'work.heel-raise-in': alsoTo(
		sentence<{ pairs: readonly Raised[] }>({
			clinician: ({ pairs }) => `Heel raise, as in its plan. ${pairs.map(raisedFor).join(' ')}`,
			player: ({ pairs }) => `Wear a heel raise. ${pairs.map(raisedFor).join(' ')}`,
		}),
		'doctor',
	),
	'work.leg-length-raise.limits': sentence({
		clinician: () =>
			'Check that the counter still holds the heel and the collar does not rub. It evens the legs: ' +
			'it is not lowered again.',
		player: () =>
			'Your heel must not slip and the collar must not rub. Do not take it out by yourself.',
	}),
	'work.heel-raise.limits': sentence<{
		freeWeeksLeast: number
		freeWeeksMost: number
		stepLeastMm: number
		stepMostMm: number
		stepWeeks: number
	}>({
		clinician: ({ freeWeeksLeast, freeWeeksMost, stepLeastMm, stepMostMm, stepWeeks }) =>
			'Check that the counter still holds the heel and the collar does not rub; once free of ' +
			`symptoms for ${number(freeWeeksLeast)} to ${amount(freeWeeksMost, 'weeks')}, lower it by ` +
			`${number(stepLeastMm)} to ${amount(stepMostMm, 'mm')} every ${amount(stepWeeks, 'weeks')}.`,
		player: () =>
			'Your heel must not slip and the collar must not rub. Do not take it out all at once: we ' +
			'lower it in steps.',
	}),
}
const studs = {
	'work.stud-first.name': nameOf('Stud under the first joint', 'Stud under the big-toe joint'),
	'work.stud-first': sentence({
		clinician: () =>
			'Find the first joint on the sole with the foot inside; where a stud stands under it, take ' +
			'it out or lower it.',
		player: () => 'Is there a stud under your big-toe joint? Have it taken out or lowered.',
	}),
	'work.stud-first.limits': sentence({
		clinician: () =>
			'A moulded stud can be cut down, not moved, and not below the thickness of the plate; grip ' +
			'is lost there. Check the rules of the competition.',
		player: () => 'You have less grip there. Do not cut studs yourself.',
	}),
	'work.stud-fifth.name': nameOf('Stud under the fifth metatarsal', 'Stud under the outer edge'),
	'work.stud-fifth': sentence({
		clinician: () =>
			'Find the outer border on the sole with the foot inside; have a stud under the fifth ' +
			'metatarsal taken out or lowered.',
		player: () =>
			'Is there a stud under the outer edge of your foot? Have it taken out or lowered.',
	}),
	'work.stud-fifth-unsteady': sentence({
		clinician: () =>
			'Find the outer border on the sole with the foot inside; where a stud lies under the fifth ' +
			'metatarsal, this pair does not serve.',
		player: () =>
			'Is there a stud under the outer edge of your foot? Then tell us before you wear it.',
	}),
	'work.stud-fifth-unsteady.limits': sentence({
		clinician: () =>
			'An ankle that gives way: no outer stud is taken out, since that narrows the base.',
		player: () => 'Your ankle gives way, so leave the outer studs in.',
	}),
	'work.stud-fifth.limits': sentence({
		clinician: () =>
			'Taking away an outer stud narrows the base in cutting: watch for rolling over the outer ' +
			'edge.',
		player: () => 'Take care that your foot does not roll over the outer edge.',
	}),
}
const stretching = {
	'work.stretch-ball.name': nameOf('Stretching at the ball'),
	'work.stretch-ball': sentence<{ mostMm: number }>({
		clinician: ({ mostMm }) =>
			`Where the width is short by up to ${amount(mostMm, 'mm')} and the upper is not a firm ` +
			'synthetic, stretch over a last at the ball.',
		player: ({ mostMm }) =>
			`A boot that is a little narrow can be stretched, by ${amount(mostMm, 'mm')} at the most.`,
	}),
	'work.stretch-ball.limits': sentence({
		clinician: () =>
			'Not across a seam or a glued edge, and not the length: a short boot stays short.',
		player: () => 'A boot that is too short cannot be stretched.',
	}),
	'work.spot-stretch.name': nameOf('Spot stretch over the joint', 'Stretch over the sore joint'),
	'work.spot-stretch': sentence({
		clinician: () => 'Ball-and-ring stretch over the sore joint, marked with the foot in the boot.',
		player: () => 'Have the boot stretched over the sore joint.',
	}),
	'work.spot-stretch.limits': sentence({
		clinician: () => 'Soft uppers only; a bonded film may crack.',
		player: () => 'This works with a soft upper only.',
	}),
}
const padding = {
	'work.collar-pad.name': nameOf('Padding beside the tendon'),
	'work.collar-pad': sentence({
		clinician: () =>
			'Two strips of padding beside the tendon, none over it, or soften the counter at its top ' +
			'edge.',
		player: () => 'Put a strip of padding on each side of the heel tendon. Put none over it.',
	}),
	'work.collar-pad.limits': sentence({
		clinician: () => 'Takes up heel width and pushes the foot forward: check toe room again.',
		player: () => 'It pushes your foot forward. Check the room in front of your toes again.',
	}),
	'work.tongue-pad.name': nameOf('Tongue pad'),
	'work.tongue-pad': sentence({
		clinician: () =>
			'A pad under the tongue takes up volume over the instep and holds the heel back.',
		player: () => 'A pad under the tongue fills the boot and holds your heel back.',
	}),
	'work.tongue-pad.limits': sentence({
		clinician: () =>
			'Not where the top of the foot is sore or a high instep already fills the boot.',
		player: () => 'Leave it out if the top of your foot is sore.',
	}),
}
const inside = {
	'work.liner-swap.name': nameOf('Liner swap'),
	'work.liner-swap': sentence({
		clinician: () =>
			'Where the liner comes out, change it for one of equal thickness that cushions.',
		player: () => 'If the liner comes out, change it for a soft one, just as thick.',
	}),
	'work.liner-swap.limits': sentence({
		clinician: () =>
			'A thicker liner takes depth over the toes and holds the heel less deeply: fit again with ' +
			'it inside.',
		player: () => 'A thicker liner takes room from your toes. Try the boot again with it inside.',
	}),
	'work.forefoot-plate.name': nameOf('Stiffening plate under the liner', 'Plate under the liner'),
	'work.forefoot-plate': sentence<{ leastMm: number; mostMm: number }>({
		clinician: ({ leastMm, mostMm }) =>
			`A thin carbon plate of ${number(leastMm)} to ${amount(mostMm, 'mm')} under the liner ` +
			'limits the bend of the big toe.',
		player: () => 'A thin, stiff plate under the liner keeps your big toe from bending too far.',
	}),
	'work.forefoot-plate.limits': sentence({
		clinician: () =>
			'Costs push-off; trial in adults of about 57 years, carried over to players. Trim it clear ' +
			'of the edge of the boot.',
		player: () => 'You push off a little less with it.',
	}),
}
/** What speaks against a piece of work, or asks for care with it. */
const cautions = {
	'work.caution-feet-at-risk': sentence({
		clinician: () =>
			'Feet at risk: no added edge, and look at the skin after the first hours of wear.',
		player: () => 'Look at your skin after the first hours in them.',
	}),
	'work.caution-raise-at-the-back': sentence({
		clinician: () => 'Impingement at the back of the ankle: a raise presses there.',
		player: () => 'A raise presses at the back of your sore ankle. Stop if it hurts more.',
	}),
	'work.caution-raise-loads-forefoot': sentence({
		clinician: () =>
			'A raise puts more load on the forefoot and the front of the knee: keep it low and watch for ' +
			'pain there.',
		player: () => 'A raise loads the front of your foot and knee more. Tell us if they hurt.',
	}),
	// of records of before: such studs are no longer proposed
	'work.caution-outer-base': sentence({
		clinician: () => 'An ankle that gives way: do not narrow the outer base.',
		player: () => 'Your ankle gives way. Leave the outer studs in.',
	}),
	'work.caution-tongue-on-instep': sentence({
		clinician: () => 'High arch with pain: a tongue pad presses on the instep.',
		player: () => 'The pad may press on the top of your foot. Take it out if it does.',
	}),
	'work.caution-stiff-on-calf': sentence({
		clinician: () => 'A stiff forefoot asks more of the calf: bring it in by steps.',
		player: () => 'A stiff front asks more of your calf. Get used to it step by step.',
	}),
	'work.caution-lock-at-the-front': sentence({
		clinician: () => 'Pinch at the front of the ankle: the lock presses there.',
		player: () => 'The lock may press at the front of your ankle. Undo it if it does.',
	}),
	'work.caution-lock-on-heel': sentence({
		clinician: () => 'Back of the heel sore: the lock pulls it against the counter.',
		player: () => 'The lock pulls your sore heel against the back. Undo it if it hurts.',
	}),
	'work.caution-knot-on-instep': sentence({
		clinician: () => 'High arch with pain: the knot presses on the instep.',
		player: () => 'The knot may press on the top of your foot. Undo it if it does.',
	}),
	'work.caution-reduced-feeling': sentence({
		clinician: () =>
			'Reduced feeling: never pull tight over the instep, and look at the skin after wear.',
		player: () => 'Never pull the laces tight. Look at your skin each time after wear.',
	}),
}
export const workSentences = {
	...heelRaise,
	...studs,
	...stretching,
	...padding,
	...inside,
	...lacingSentences,
	...cautions,
}
/** What a change or a lacing is called, by its id; one this version does not know, by that. */
export function workName(id: string): string {
	const named: Readonly<Record<string, { clinician: (filling: never) => string }>> = workSentences
	return named[`work.${id}.name`]?.clinician({} as never) ?? id.replaceAll('-', ' ')
}
/** Names of its numbers that are no measure of the visit. */
export const workReadings = {
	heelRaiseProposedMm: 'heel raise proposed',
	'heel-slips': 'heel slips in',
}
