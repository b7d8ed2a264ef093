/** What is always said with an element, and what speaks against one. */
import type { Condition } from '../../visit/terms.ts'
import type { Side } from '../../visit/visit.ts'
import { sentence } from '../sentence.ts'
import { amount, capital, count, term, terms } from './format.ts'

/** A pair by its id, or the role of one to be chosen. */
const pairWords = (pair: string): string =>
	pair.startsWith('role.') ? `the ${term(pair.slice('role.'.length))} pair` : pair

/** What speaks against an element, in a clause. */
const objections = {
	'fifth-metatarsal': 'fifth metatarsal stress fracture: no hard post under the fifth metatarsal',
	'fifth-metatarsal-disputed':
		'fifth metatarsal stress fracture, now or before: sources disagree on lateral posting; ' +
		'nothing hard under the fifth metatarsal',
	bunionette: 'bunionette: the post loads the outer border',
	'first-joint-jammed': 'stiff or painful first joint: a medial forefoot post jams it',
	'first-joint-limited': 'first joint limited when measured: a medial forefoot post jams it',
	'first-joint-held': 'painful first joint: it must be held, not freed',
	'forefoot-varus': 'forefoot varus: the first ray has no ground to come down to',
	'calf-lever': 'calf or Achilles trouble: a stiff plate lengthens the lever on it',
	neuroma: 'neuroma: a dome can irritate it; stop if tingling rises',
	'back-of-ankle': 'impingement at the back of the ankle: a raise presses there',
	'forefoot-load': 'forefoot pain: a raise moves load forwards',
	'front-of-knee': 'front knee pain: a raise can load it more',
	'ankle-tips-outwards': 'lateral ankle instability: a medial post can tip the ankle outwards',
	'knee-inward-load':
		'knee osteoarthritis: a heel tilted from its inner side raises the inward load on the knee',
	'joined-bones': 'tarsal coalition: a rigid foot is accommodated, not tilted from the inner side',
	'heel-pressure': 'pain under the heel: a skive presses there',
	'inner-side-load': 'pain on the inner side or in the sinus tarsi: a lateral post loads it',
	'inner-side-or-heel-load': 'inner-side, sinus tarsi or heel pain: a lateral skive loads it',
} as const
export type ObjectionRule = keyof typeof objections
/** What speaks against an element, and the recorded conditions by which it does. */
export type Objection = {
	rule: ObjectionRule
	conditions: readonly Condition[]
}
/** The clause of an objection, without a capital or a full stop. */
export const objectionWords = ({ rule, conditions }: Objection): string =>
	objections[rule] + (conditions.length > 0 ? ` (${terms(conditions)})` : '')

export const cautionSentences = {
	'insert.objection': sentence<Objection>({
		clinician: (objection) => `${capital(objectionWords(objection))}.`,
	}),
	'insert.caution-minor': sentence({
		clinician: () =>
			'A minor: record the consenting adult; measure again each season, the size can change in ' +
			'months.',
		player: () => 'Your feet still grow. Have your insert checked each season.',
	}),
	'insert.caution-surgery': sentence({
		clinician: () =>
			"After surgery, without the surgeon's clearance: ask the surgeon before it is worn.",
		player: () => 'You had an operation. Wear it only once your surgeon says so.',
	}),
	'insert.caution-very-mobile': sentence({
		clinician: () => 'Very mobile joints: softer shell, full contact.',
		laboratory: () => 'Softer shell, full contact.',
	}),
	'insert.caution-adult-rule': sentence({
		clinician: () => 'The rule of thickness is that of a protocol for adults.',
	}),
	'insert.caution-liner-out': sentence({
		clinician: () =>
			'Take the factory liner out first, then fit the boot again with the insert inside.',
		player: () => 'Take the old liner out first. Then check that your boot still fits.',
	}),
	'insert.caution-rigid-foot': sentence({
		clinician: () => 'Not for a rigid foot. Raises the inward load on the knee.',
	}),
	'insert.caution-rigid-midfoot': sentence({ clinician: () => 'Not for a rigid midfoot.' }),
	'insert.caution-eversion': sentence<{ changeDeg: number }>({
		clinician: ({ changeDeg }) =>
			`Expected change: about ${amount(Math.abs(changeDeg), 'deg')} ` +
			`${changeDeg > 0 ? 'more' : 'less'} eversion.`,
	}),
	'insert.caution-skive-cup': sentence<{ cupMm: number; bootMm: number }>({
		clinician: ({ cupMm, bootMm }) =>
			`Needs a heel cup of ${amount(cupMm, 'mm')} or more; a boot holds about ` +
			`${amount(bootMm, 'mm')}.`,
	}),
	'insert.caution-fifth-metatarsal': sentence({
		clinician: () =>
			'Boots load the outer midfoot more than trainers: keep the post off the fifth metatarsal.',
		laboratory: () => 'Keep the post off the fifth metatarsal.',
	}),
	'insert.caution-jams-first-ray': sentence({ clinician: () => 'It can jam the first ray.' }),
	'insert.caution-weak-proof': sentence({ clinician: () => 'Proof in walking is weak.' }),
	'insert.caution-push-off': sentence({
		clinician: () =>
			'It can cost push-off speed. Check that the sole of the boot does not already do it.',
		player: () => 'You may push off a little slower with it.',
	}),
	'insert.caution-dome-room': sentence({
		clinician: () =>
			'In running, a forefoot cushion lowered pressure where a pad did not. Takes room in a boot.',
	}),
	'insert.caution-room-over-toes': sentence({
		clinician: () => 'Takes room over the toes.',
		player: () => 'It takes some room over your toes. Check that your boot is not tight.',
	}),
	'insert.caution-no-plug': sentence<{ weeks: number }>({
		clinician: ({ weeks }) =>
			'No soft plug in the hole. If focal bone pain stays after ' +
			`${amount(weeks, 'weeks')}, image it.`,
		player: ({ weeks }) => `Tell us if it still hurts after ${amount(weeks, 'weeks')}.`,
		laboratory: () => 'No soft plug in the aperture.',
	}),
	'insert.caution-heel-bone-stress': sentence({
		clinician: () => 'Exclude a bone stress injury of the heel first: squeeze it from both sides.',
	}),
	'insert.caution-count-with-raise': sentence({
		clinician: () => 'Count it with the raise: the boot must still hold the heel.',
	}),
	'insert.caution-same-raise': sentence({
		clinician: () =>
			'Same raise in boots and trainers, or taper on purpose. A higher raise in boots had no ' +
			'effect in a small group. Check heel slip.',
		player: () => 'Use it in boots and in trainers. Tell us if your heel slips.',
	}),
	'insert.caution-growing-heel': sentence<{ weeks: number }>({
		clinician: ({ weeks }) =>
			`Growing heel: look again at ${amount(weeks, 'weeks')}, and take the raise out when the ` +
			'heel is free of pain.',
		player: ({ weeks }) =>
			`We look at your heel again after ${amount(weeks, 'weeks')}. Once it no longer hurts, the ` +
			'raise comes out.',
	}),
	'insert.caution-cover-in-boots': sentence<{ mostMm: number }>({
		clinician: ({ mostMm }) => `In boots ${amount(mostMm, 'mm')} at most.`,
		laboratory: ({ mostMm }) => `The cover in boots: ${amount(mostMm, 'mm')} at most.`,
	}),
	'insert.caution-by-pair': sentence<{
		side: Side
		/** An owned pair by its name, one to be chosen by `role.<role>`. */
		heights: readonly { pair: string; name?: string; mm: number }[]
	}>({
		clinician: ({ side, heights }) =>
			`The ${side} raise by pair: ` +
			`${heights.map(({ pair, name, mm }) => `${name ?? pairWords(pair)} ${amount(mm, 'mm')}`).join(', ')}. Make ` +
			'it so that it comes out.',
		laboratory: ({ heights }) =>
			'With loose wedges under it, so that it comes to ' +
			`${heights.map(({ mm }) => amount(mm, 'mm')).join(' and ')}.`,
	}),
	'insert.caution-no-raise': sentence({
		clinician: () => 'No raise is proposed.',
	}),
	'insert.caution-blocks': sentence<{ errorMm: number }>({
		clinician: ({ errorMm }) =>
			'Measure again with blocks before it is made; a clinical reading can be wrong by more ' +
			`than ${amount(errorMm, 'mm')}.`,
	}),
	'insert.caution-growing-leg': sentence({
		clinician: () => 'Growing player: measure again each season.',
		player: () => 'You still grow. Have your legs measured again each season.',
	}),
}
const days = (value: number) => count(value, 'day')
/** When each step of wearing in is. */
export const wearInWhen = {
	'insert.wear-first-day': () => 'Day 1',
	'insert.wear-rise': ({ toDay }: { toDay: number }) => `Day 2 to day ${toDay}`,
	'insert.wear-all-day': () => 'Then',
	'insert.wear-first-training': () => 'Training 1',
	'insert.wear-second-training': () => 'Training 2',
	'insert.wear-third-training': () => 'Training 3',
	'insert.wear-match': () => 'Match',
	'insert.wear-review': () => 'Re-check',
	'insert.wear-stop': () => 'Stop and call',
} as const
/** How an insert is worn in: to the player each step is told whole. */
export const wearInSentences = {
	'insert.wear-first-day': sentence<{ hours: number }>({
		clinician: ({ hours }) => `Everyday shoes, ${amount(hours, 'h')}.`,
		player: ({ hours }) => `Day 1: ${amount(hours, 'h')} in your everyday shoes.`,
		guardian: ({ hours }) => `Day 1: ${amount(hours, 'h')} in everyday shoes.`,
	}),
	'insert.wear-rise': sentence<{
		toDay: number
		riseHours: number
		hours: number
		/** Days on each step, where joints are very mobile. */
		stayDays?: number
	}>({
		clinician: ({ toDay, riseHours, hours, stayDays }) =>
			`${amount(riseHours, 'h')} more each day: ${amount(hours, 'h')} on day ${toDay}.` +
			(stayDays === undefined ? '' : ` Very mobile joints: stay ${days(stayDays)} on each step.`),
		player: ({ toDay, riseHours, hours, stayDays }) =>
			stayDays === undefined
				? `${amount(riseHours, 'h')} more a day, to ${amount(hours, 'h')} on day ${toDay}.`
				: `${amount(riseHours, 'h')} more every ${days(stayDays)}, to ${amount(hours, 'h')}.`,
	}),
	'insert.wear-all-day': sentence<{ wholeDays: number }>({
		clinician: ({ wholeDays }) =>
			`${days(wholeDays)} of all-day wear without trouble before it goes into boots.`,
		player: ({ wholeDays }) =>
			`Then all day for ${days(wholeDays)}. If nothing hurts, it may go into boots.`,
	}),
	'insert.wear-first-training': sentence<{ minutes: number }>({
		clinician: ({ minutes }) => `${amount(minutes, 'min')} in boots, then out.`,
		player: ({ minutes }) => `First training: ${amount(minutes, 'min')}, then take it out.`,
	}),
	'insert.wear-second-training': sentence({
		clinician: () => 'Half the session.',
		player: () => 'Second training: half the time.',
	}),
	'insert.wear-third-training': sentence({
		clinician: () => 'The whole session.',
		player: () => 'Third training: the whole time.',
	}),
	'insert.wear-match': sentence<{ wholeSessions: number }>({
		clinician: ({ wholeSessions }) =>
			`After ${count(wholeSessions, 'whole session')}, and not in the first match week of a season.`,
		player: ({ wholeSessions }) =>
			`Match: after ${count(wholeSessions, 'whole training')}, but not in the first match week of a ` +
			'season.',
	}),
	'insert.wear-review': sentence({
		clinician: () =>
			'Ask how the wearing-in went, look at skin and fit, and take it out where it does not help.',
		player: () => 'Bring it to your next visit.',
		guardian: () => 'Bring it to the next visit here.',
	}),
	'insert.wear-stop': sentence<{ painDays: number }>({
		clinician: ({ painDays }) => `Pain for more than ${days(painDays)}, or a blister.`,
		player: ({ painDays }) =>
			`A blister, or pain for more than ${days(painDays)}? Take it out and call us.`,
	}),
}
