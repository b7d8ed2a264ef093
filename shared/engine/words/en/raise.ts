/** What the raise room says. Heights mm. */
import type { PairRole } from '../../visit/terms.ts'
import type { Side } from '../../visit/visit.ts'
import { sentence } from '../sentence.ts'
import { amount, count, listed, together } from './format.ts'

type PerSide = { left: number; right: number }
type MadeBy = 'none' | 'wedge' | 'insert' | 'outsole'
/** A pair by its name, or one still to be chosen by what it is for. */
type Named = { pair?: string; role?: PairRole }
const ofRole: Record<PairRole, string> = {
	match: 'new match boots',
	training: 'new boots for training',
	running: 'new running shoes',
	everyday: 'new everyday shoes',
}
const named = ({ pair, role }: Named): string => pair ?? ofRole[role ?? 'match']
const makers: Record<MadeBy, string> = {
	none: '',
	wedge: ', by a wedge under the liner',
	insert: ', by the insert',
	outsole: ', on the outsole',
}
const bySide = ({ left, right }: PerSide, maker: (side: Side) => string): string =>
	left === right && maker('left') === maker('right')
		? `${amount(left, 'mm')} under both heels${left === 0 ? '' : maker('left')}`
		: `${amount(left, 'mm')} on the left${left === 0 ? '' : maker('left')}, ` +
			`${amount(right, 'mm')} on the right${right === 0 ? '' : maker('right')}`
const stepMm = (mm: PerSide): string =>
	mm.left === mm.right
		? `${amount(mm.left, 'mm')} in both shoes`
		: `${amount(mm.left, 'mm')} on the left and ${amount(mm.right, 'mm')} on the right`
/** The same where it is known that both shoes are meant. */
const plainMm = (mm: PerSide): string => (mm.left === mm.right ? amount(mm.left, 'mm') : stepMm(mm))
const held = (givenMm: number, wantedMm: number): string =>
	`${givenMm === 0 ? 'None' : amount(givenMm, 'mm')} in place of ${amount(wantedMm, 'mm')}`
const reasonWords = {
	'restricted-ankle': 'a restricted ankle',
	'front-block': 'a block at the front of the ankle',
	'growing-heel': 'a growing heel',
	achilles: 'Achilles pain',
	'plantar-heel': 'pain under the heel',
} as const
const plainReason = {
	'restricted-ankle': 'your stiff ankle',
	'front-block': 'the pinch at the front of your ankle',
	'growing-heel': 'your sore heel',
	achilles: 'your Achilles tendon',
	'plantar-heel': 'your sore heel',
} as const
type Reason = keyof typeof reasonWords
const notACure = 'It does not treat the cause.'

export const raiseSentences = {
	'raise.range': sentence<{ mm: number; reasons: Reason[] }>({
		clinician: ({ mm, reasons }) =>
			`For ${listed(reasons.map((reason) => reasonWords[reason]))}: the heel ` +
			`${amount(mm, 'mm')} above the forefoot in both shoes, by the offset of each pair and a ` +
			`raise together. An estimate, to be edited. ${notACure}`,
		player: ({ reasons: [first] }) =>
			`A small raise under both heels may ease ${plainReason[first ?? 'restricted-ankle']}. ` +
			notACure,
		doctor: ({ mm, reasons }) =>
			`Proposed for ${listed(reasons.map((reason) => reasonWords[reason]))}, as an estimate: the ` +
			`heel ${amount(mm, 'mm')} above the forefoot in both shoes.`,
	}),
	'raise.pain': sentence<{ mm: number; reasons: Reason[]; offsetCounts: boolean }>({
		clinician: ({ mm, reasons, offsetCounts }) =>
			`For ${listed(reasons.map((reason) => reasonWords[reason]))}: ${amount(mm, 'mm')} under both ` +
			(offsetCounts
				? 'heels less the offset of the pair, as practice has it'
				: 'heels, added to the shoes worn, as in the trials: the offset of the pair is not taken off') +
			`. An estimate, to be edited. ${notACure}`,
		player: ({ reasons: [first] }) =>
			`A raise under both heels may ease ${plainReason[first ?? 'achilles']} for a while. ` +
			notACure,
		doctor: ({ mm, reasons }) =>
			`Proposed for ${listed(reasons.map((reason) => reasonWords[reason]))}, as an estimate: a heel ` +
			`raise of ${amount(mm, 'mm')} in both shoes.`,
	}),
	'raise.leg-length': sentence<{ side: Side; mm: number; differenceMm: number }>({
		clinician: ({ side, mm, differenceMm }) =>
			`For a leg-length difference of ${amount(differenceMm, 'mm')}: ${amount(mm, 'mm')} on the ` +
			`${side}, the shorter side, in every pair worn standing, whatever its offset. An estimate, ` +
			'to be edited.',
		player: ({ side, mm }) =>
			`Your ${side} leg is a little shorter. Wear ${amount(mm, 'mm')} more under your ${side} heel ` +
			'in every pair.',
		guardian: ({ side, mm }) =>
			`The ${side} leg is a little shorter. ${amount(mm, 'mm')} more go under the ${side} heel in ` +
			'every pair.',
		doctor: ({ side, mm, differenceMm }) =>
			`Proposed for a leg-length difference of ${amount(differenceMm, 'mm')}: ${amount(mm, 'mm')} ` +
			`on the ${side}.`,
	}),
	'raise.pair': sentence<Named & { mm: PerSide; madeBy: { left: MadeBy; right: MadeBy } }>({
		clinician: ({ mm, madeBy, ...pair }) =>
			`Heel raise in ${named(pair)}: ${bySide(mm, (side) => makers[madeBy[side]])}.`,
		player: ({ mm, ...pair }) => `In ${named(pair)}: ${bySide(mm, () => '')}.`,
		laboratory: ({ mm, madeBy, ...pair }) =>
			`Heel raise for ${named(pair)}: ${bySide(mm, (side) => makers[madeBy[side]])}.`,
	}),
	'raise.offset-unknown': sentence<{ pairs: Named[] }>({
		clinician: ({ pairs }) =>
			`Measure the thickness under heel and ball of ${listed(pairs.map(named))}: without the ` +
			'offset no heel raise is given there.',
	}),
	'raise.limb-waits': sentence<{ side: Side }>({
		clinician: ({ side }) =>
			`No heel raise in either shoe while the ${side} leg waits: both shoes are raised or neither.`,
	}),
	'raise.back-of-ankle': sentence<{ side: Side; front: boolean }>({
		clinician: ({ side, front }) =>
			(front
				? `The ${side} ankle is caught at the front and at the back: a raise opens the front and ` +
					'closes the back. '
				: `A raise closes the back of the ${side} ankle, which is what hurts. `) +
			'No heel raise is proposed.',
		doctor: ({ side, front }) =>
			front
				? `Signs of impingement at the front and at the back of the ${side} ankle: no heel raise ` +
					'was proposed.'
				: `Posterior impingement of the ${side} ankle: no heel raise was proposed.`,
	}),
	'raise.forefoot': sentence<{ limitMm: number }>({
		clinician: ({ limitMm }) =>
			'A raise moves load to the forefoot, and this forefoot bears no more: offset and raise ' +
			`together are held at ${amount(limitMm, 'mm')}. Look at the forefoot again at the re-check.`,
		player: () => 'Tell us if the front of your foot starts to hurt with the raise.',
		guardian: () => 'Tell us if the front of the foot starts to hurt with the raise.',
	}),
	'raise.front-of-knee': sentence({
		clinician: () => 'A raise can load the front of the knee more: ask about it at the re-check.',
		player: () => 'Tell us if the front of your knee hurts more with the raise.',
		guardian: () => 'Tell us if the front of the knee hurts more with the raise.',
	}),
	'raise.worn': sentence<Named & { wornMm: number; verdict: 'leave' | 'take-out'; given: boolean }>(
		{
			clinician: ({ wornMm, verdict, given, ...pair }) =>
				`${amount(wornMm, 'mm')} of raise already lies in ${named(pair)}: ` +
				(verdict === 'leave'
					? given
						? 'leave it, it is what is asked for.'
						: 'leave it as it is, and ask what it is for.'
					: given
						? 'take it out, the raise given here takes its place.'
						: 'take it out.') +
				' It counts with everything else under the heel.',
			player: ({ verdict, ...pair }) =>
				verdict === 'leave'
					? `Leave the heel raise in ${named(pair)} as it is.`
					: `Take the old heel raise out of ${named(pair)}.`,
		},
	),
	'raise.left-off': sentence({
		clinician: () =>
			'Nothing is put into this pair: it has no room to spare, or is not worn as it is.',
	}),
	'raise.measure-offset': sentence({
		clinician: () => 'No figure: measure the thickness under heel and ball.',
		laboratory: () => 'The offset of this pair is not known.',
	}),
	'raise.offset-enough': sentence<{ offsetMm: number }>({
		clinician: ({ offsetMm }) => `Its own offset of ${amount(offsetMm, 'mm')} is enough.`,
		player: () => 'Its heel is high enough as it is.',
	}),
	'raise.offset-of-kind': sentence<{ offsetMm: number }>({
		clinician: ({ offsetMm }) =>
			`Worked out for an offset of ${amount(offsetMm, 'mm')}, which its kind usually has: measure ` +
			'the pair that is chosen.',
	}),
	'raise.limit-inside': sentence<{
		wantedMm: number
		givenMm: number
		limitMm: number
		insertMm: number
	}>({
		clinician: ({ wantedMm, givenMm, limitMm, insertMm }) =>
			together(
				`${held(givenMm, wantedMm)}: no more than ` +
					`${amount(limitMm, 'mm')} goes under the heel here, or it slips out of the collar.`,
				insertMm > 0 && `The insert takes ${amount(insertMm, 'mm')} of it.`,
			),
	}),
	'raise.limit-pitch': sentence<{
		wantedMm: number
		givenMm: number
		limitMm: number
		forefootAtRisk: boolean
	}>({
		clinician: ({ wantedMm, givenMm, limitMm, forefootAtRisk }) =>
			`${held(givenMm, wantedMm)}: the heel stands no more ` +
			`than ${amount(limitMm, 'mm')} above the forefoot` +
			`${forefootAtRisk ? ', which bears no more load' : ''}.`,
	}),
	'raise.outsole': sentence<{ side: Side; mm: number; beside?: boolean }>({
		clinician: ({ side, mm, beside }) =>
			`The correction of ${amount(mm, 'mm')} on the ${side} is more than goes inside` +
			`${beside ? ' beside the raise of both heels' : ''}: on the outsole, whole at the heel and ` +
			'half at the ball.',
		player: ({ side, mm }) =>
			`On your ${side} shoe, ${amount(mm, 'mm')} of it go under the sole. A shoe mender builds it on.`,
		guardian: ({ side, mm }) =>
			`On the ${side} shoe, ${amount(mm, 'mm')} of it go under the sole. A shoe mender builds it on.`,
		laboratory: ({ side, mm }) =>
			`${amount(mm, 'mm')} on the outsole of the ${side} shoe, whole at the heel and half at the ` +
			'ball.',
	}),
	'raise.heel-slips': sentence({
		clinician: () => 'The heel slips in this pair already: mend its hold before it is raised.',
	}),
	'raise.step-everyday': sentence<{ days: number }>({
		clinician: ({ days }) =>
			`Everyday shoes first, for ${count(days, 'day')}, a little longer each day.`,
		player: ({ days }) =>
			`Everyday shoes first, for ${count(days, 'day')}, a little longer each day.`,
	}),
	'raise.step-training': sentence<{ first: boolean }>({
		clinician: ({ first }) =>
			`${first ? 'First' : 'Then'} in training, a part of the session to begin with.`,
		player: ({ first }) =>
			first ? 'First for a part of training.' : 'Then for a part of training.',
	}),
	'raise.step-match': sentence<{ wholeSessions: number }>({
		clinician: ({ wholeSessions }) =>
			`In a match after ${count(wholeSessions, 'whole training session')} without trouble, never ` +
			'before.',
		player: ({ wholeSessions }) =>
			`In a match once it felt good for ${count(wholeSessions, 'whole session')}, never before.`,
	}),
	'raise.step-stop': sentence({
		clinician: () =>
			'Out at once where the heel slips, the forefoot or the knee hurts, or a blister starts: ' +
			'then ask.',
		player: () =>
			'Take it out and call us if your heel slips, a blister starts, or something new hurts.',
		guardian: () =>
			'Take it out and call us if the heel slips, a blister starts, or something new hurts.',
	}),
	'raise.step-re-check': sentence<{ weeks: number }>({
		clinician: ({ weeks }) =>
			`Re-check after ${count(weeks, 'week')}: where nothing is better, it comes out.`,
		player: ({ weeks }) =>
			`We look again after ${count(weeks, 'week')}. If it did not help, it comes out.`,
	}),
	'raise.step-wean': sentence<{
		mm: PerSide
		weeks: number
		when: 'free-of-pain' | 'range-regained'
		first: boolean
	}>({
		clinician: ({ mm, weeks, when, first }) =>
			first
				? `After ${count(weeks, 'week')} ${
						when === 'free-of-pain' ? 'without pain' : 'with the range regained'
					}, down to ${stepMm(mm)} in every pair that has more.`
				: `${count(weeks, 'week')} later, if nothing has come back, down to ${stepMm(mm)}.`,
		player: ({ mm, weeks, when, first }) =>
			first
				? `After ${count(weeks, 'week')} ${
						when === 'free-of-pain' ? 'without pain' : 'with an ankle that bends well'
					}: down to ${stepMm(mm)} in each pair that has more.`
				: `${count(weeks, 'week')} later, if all is well: ${plainMm(mm)}.`,
	}),
}
/** Names of its numbers that are no measure of the visit. */
export const raiseReadings = {
	raiseMm: 'heel raise',
	wornRaiseMm: 'heel raise worn',
}
