/** What the insert room says. */
import type { Side } from '../../visit/visit.ts'
import { sentence } from '../sentence.ts'
import { amount, capital, listed, number } from './format.ts'
import { adjustSentences } from './insert-adjust.ts'
import {
	cautionSentences,
	type Objection,
	objectionWords,
	wearInSentences,
} from './insert-cautions.ts'
import { elementSentences } from './insert-elements.ts'
import { type ElementId, elementName, elementText, type SizedElement } from './insert-names.ts'
import { settledSentences } from './insert-settled.ts'

interface Heel {
	element: string
	heightMm: number
}
const findings = {
	'insert.proposal': sentence<{ side: Side; elements: readonly SizedElement[] }>({
		clinician: ({ side, elements }) =>
			`Insert, ${side}: ${elements.map(elementText).join('; ')}. A starting point for the ` +
			'clinician to change.',
		player: ({ side }) => `An insert may help your ${side} foot.`,
		guardian: ({ side }) => `An insert may help the ${side} foot.`,
		doctor: ({ side, elements }) =>
			`An insert is proposed for the ${side} foot: ${elements.map(elementText).join('; ')}.`,
	}),
	'insert.stopped': sentence<{ side: Side; stops: readonly string[] }>({
		clinician: ({ side }) =>
			`No insert for the ${side} foot until what was done about the warning signs is recorded.`,
		player: ({ side }) =>
			`No insert for your ${side} foot yet. First the warning signs must be cleared up.`,
		guardian: ({ side }) =>
			`No insert for the ${side} foot yet. First the warning signs must be cleared up.`,
		doctor: ({ side }) =>
			`No insert is made for the ${side} foot until the warning signs are cleared up.`,
		laboratory: () => 'held by the prescriber; make nothing for this side',
	}),
}
/** What works against the clinician's own figures; of records before 0.4, also of a proposal. */
const conflicts = {
	'insert.withheld': sentence<{
		side: Side
		element: ElementId
		against: readonly Objection[]
	}>({
		clinician: ({ side, element, against }) =>
			`${capital(elementName(element))} is left out on the ${side}: ` +
			`${against.map(objectionWords).join('; ')}.`,
	}),
	'insert.choose': sentence<{ side: Side; first: ElementId; second: ElementId }>({
		clinician: ({ side, first, second }) =>
			`${capital(elementName(first))} and ${elementName(second)} on the ${side} work against ` +
			'each other or do the same: choose one.',
		laboratory: ({ first, second }) =>
			`${capital(elementName(first))} and ${elementName(second)}: ask which one stands.`,
	}),
	'insert.shell-boot': sentence<{ side: Side; shellMm: number; mostMm: number }>({
		clinician: ({ side, shellMm, mostMm }) =>
			`The ${side} shell of ${amount(shellMm, 'mm')} is thicker than the ${amount(mostMm, 'mm')} ` +
			'that boots usually take: a stiffer, thinner material in the boot, or a device for ' +
			'trainers only.',
		laboratory: ({ shellMm, mostMm }) =>
			`The shell of ${amount(shellMm, 'mm')} is thicker than the ${amount(mostMm, 'mm')} that ` +
			'boots usually take: ask before making.',
	}),
	'insert.skive-cup': sentence<{
		side: Side
		cupMm: number
		bootMm: number
		/** Whether a post of the same edge is proposed too, which stays in boots. */
		withPost: boolean
	}>({
		clinician: ({ side, cupMm, bootMm, withPost }) =>
			`The skive on the ${side} needs a heel cup of ${amount(cupMm, 'mm')} and a boot holds ` +
			`about ${amount(bootMm, 'mm')}: leave it out in boots` +
			`${withPost ? '; the post stays there' : ''}.`,
		laboratory: ({ cupMm, bootMm }) =>
			`The skive needs a heel cup of ${amount(cupMm, 'mm')} and a boot holds about ` +
			`${amount(bootMm, 'mm')}: trainers only.`,
	}),
	'insert.raise-waits': sentence<{ side: Side; otherSide: Side }>({
		clinician: ({ otherSide }) =>
			'The heel raise is for both shoes: it waits until what was done about the ' +
			`${otherSide} side is recorded.`,
		laboratory: () => 'The heel raise is held; it is not part of this order.',
	}),
	'insert.raise-total': sentence<{ side: Side; totalMm: number; limitMm: number }>({
		clinician: ({ totalMm, limitMm }) =>
			`Raises of ${amount(totalMm, 'mm')} together are more than the ${amount(limitMm, 'mm')} a ` +
			`boot holds: cut to ${amount(limitMm, 'mm')} inside; the rest belongs on the outside of ` +
			'the sole or in another shoe.',
		laboratory: ({ limitMm }) =>
			`Raises inside are cut to ${amount(limitMm, 'mm')} together; the rest is not part of this ` +
			'order.',
	}),
	'insert.volume': sentence<{
		side: Side
		addedMm: number
		limitMm: number
		parts: readonly Heel[]
		coverMm: number
		/** What the liner that comes out gives back; 0 where none is counted. */
		linerMm: number
	}>({
		clinician: ({ side, addedMm, limitMm, parts, coverMm, linerMm }) =>
			`The ${side} heel would stand ${amount(addedMm, 'mm')} higher in the boot ` +
			`(${stack(parts, coverMm, linerMm)}), more than the ${amount(limitMm, 'mm')} in use: ` +
			`${listed(remedies(parts, linerMm), 'or')}.`,
		laboratory: ({ addedMm, limitMm, parts, coverMm, linerMm }) =>
			`The heel would stand ${amount(addedMm, 'mm')} higher in the boot ` +
			`(${stack(parts, coverMm, linerMm)}), more than ${amount(limitMm, 'mm')}: ask before making.`,
	}),
	'insert.toe-depth': sentence<{ side: Side; addedMm: number; depthMm: number }>({
		clinician: ({ side, addedMm, depthMm }) =>
			`The ${side} forefoot additions of ${amount(addedMm, 'mm')} are more than the ` +
			`${amount(depthMm, 'mm')} free over the toes in this boot: thinner additions or a deeper ` +
			'boot.',
		laboratory: ({ addedMm, depthMm }) =>
			`The forefoot additions of ${amount(addedMm, 'mm')} are more than the ` +
			`${amount(depthMm, 'mm')} free over the toes: ask before making.`,
	}),
	'insert.decided-raise': sentence<{
		side: Side
		totalMm: number
		limitMm: number
		/** Above the limit at which no boot holds them, or above that of a warning. */
		limit: 'stop' | 'warn'
	}>({
		clinician: ({ side, totalMm, limitMm, limit }) =>
			`The raises decided for the ${side} come to ${amount(totalMm, 'mm')}, above ` +
			`${amount(limitMm, 'mm')}: ${raiseAdvice[limit]}.`,
		laboratory: ({ totalMm, limitMm }) =>
			`The raises come to ${amount(totalMm, 'mm')}, above ${amount(limitMm, 'mm')}: ask before ` +
			'making.',
	}),
	'insert.decided-cup': sentence<{ side: Side; neededMm: number; cupMm: number }>({
		clinician: ({ side, neededMm, cupMm }) =>
			`The skive decided for the ${side} needs a heel cup of ${amount(neededMm, 'mm')}; ` +
			`${amount(cupMm, 'mm')} is decided.`,
		laboratory: ({ neededMm, cupMm }) =>
			`The skive needs a heel cup of ${amount(neededMm, 'mm')}; ${amount(cupMm, 'mm')} is ordered: ` +
			'ask before making.',
	}),
}
const raiseAdvice = {
	stop: 'not inside a boot; put them on the sole or keep them to other shoes',
	warn: 'check heel hold and counter height in the boot',
} as const
const stack = (parts: readonly Heel[], coverMm: number, linerMm: number): string =>
	[
		...parts.map(({ element, heightMm }) => `${elementName(element)} ${number(heightMm)}`),
		`cover ${number(coverMm)}`,
		linerMm > 0 ? `liner out ${number(linerMm)}` : 'liner not counted',
	].join(', ')
/** Only what is there can be thinned or taken out. */
const remedies = (parts: readonly Heel[], linerMm: number): string[] => [
	...(parts.some(({ element }) => element === 'shell') ? ['thin the shell'] : []),
	...(linerMm > 0 ? [] : ['take the liner out']),
	'check heel hold and depth in the boot',
]
/** What stopped an insert on a limb: in records of before 0.4. */
const stops = {
	'insert.stop-night-pain': sentence({ clinician: () => 'Pain at night or at rest.' }),
	'insert.stop-weight-bearing': sentence({ clinician: () => 'Cannot bear weight.' }),
	'insert.stop-bony-tenderness': sentence({ clinician: () => 'Bony tenderness.' }),
	'insert.stop-bone-stress': sentence({ clinician: () => 'Bone stress injury suspected.' }),
	'insert.stop-midfoot-sprain': sentence({
		clinician: () => 'Midfoot sprain: films with weight on both feet first.',
	}),
	'insert.stop-limp': sentence({ clinician: () => 'Growing player with a limp that lasts.' }),
	'insert.stop-hot-joint': sentence({ clinician: () => 'Hot, swollen joint.' }),
	'insert.stop-numb': sentence({ clinician: () => 'Numbness or loss of protective feeling.' }),
	'insert.stop-infection': sentence({ clinician: () => 'Infected skin or ulcer.' }),
	'insert.stop-rigid-or-cavus': sentence({
		clinician: () => 'Rigid flat foot, or high arch on one side only.',
	}),
	'insert.stop-sudden-leg-length': sentence({
		clinician: () => 'Leg-length difference that came on suddenly.',
	}),
	'insert.stop-diabetic-risk': sentence({
		clinician: () => 'Foot with an ulcer in the past.',
	}),
}
export const insertSentences = {
	...adjustSentences,
	...findings,
	...settledSentences,
	...conflicts,
	...stops,
	...elementSentences,
	...cautionSentences,
	...wearInSentences,
}
/** Names of its numbers that are no measure of the visit. */
export const insertReadings = {
	element: 'element',
	warningSign: 'warning sign',
	ankleRaiseMm: 'heel raise proposed from the ankle',
	addedBy: 'added by the clinician',
}
