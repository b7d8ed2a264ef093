/** What the posture room says. */
import { otherSide } from '../../visit/sides.ts'
import type { Side } from '../../visit/visit.ts'
import { sentence } from '../sentence.ts'
import { amount, count, day, number, plural, term, together } from './format.ts'

const fewerOrMore = (by: number): string =>
	count(Math.abs(by), by < 0 ? 'fewer heel rise' : 'more heel rise')
/** A joint that is free off the ground moves freely; one that falls short of it merely bends. */
const held = ({ verdict, free }: { verdict: Verdict; free?: boolean }): string =>
	verdict === 'structural-limit'
		? 'is limited off the ground as well, with a painful joint recorded (structural limit)'
		: free === false
			? 'bends less than freely off the ground and is held when standing (functional limit)'
			: 'moves freely off the ground but is held when standing (functional limit)'
type Verdict = 'functional-limit' | 'structural-limit'
const rayWords = {
	plantarflexed: () => 'look for pressure under the first joint and keep studs clear of it',
	dorsiflexed: () => 'look for load moving to the second ray',
	hypermobile: (excessMm: number) =>
		`this counts as excessive only above ${amount(excessMm, 'mm')} of upward movement with ` +
		'symptoms (expert opinion)',
} as const
const legs = (differenceMm: number): string =>
	`The leg-length difference of ${amount(differenceMm, 'mm')}`
/** How a correction begins: mm, and the shares of the difference in per cent. */
interface Start {
	minMm: number
	maxMm: number
	minPercent: number
	maxPercent: number
}
const startWords = (start: Start | undefined): string | undefined =>
	start &&
	`Start with ${number(start.minMm)} to ${amount(start.maxMm, 'mm')} ` +
		`(${number(start.minPercent)} to ${amount(start.maxPercent, '%')}), in the shoe first, then ` +
		'on the outsole, and measure again.'
const askSide = (shorterKnown: boolean): string | false =>
	!shorterKnown && 'Record which leg is the shorter one.'

export const postureSentences = {
	'posture.no-limit': sentence({
		clinician: () => 'no published smallest real change was found',
	}),
	'posture.fpi': sentence<{ side: Side; fpi: number; band: string; scheme: string }>({
		clinician: ({ side, fpi, band, scheme }) =>
			`The ${side} foot posture index is ${fpi}: ${term(band)} (${scheme} scheme). This alone is ` +
			'no reason for an insert.',
	}),
	'posture.fpi-minor': sentence<{ side: Side; fpi: number; limit: number }>({
		clinician: ({ side, fpi, limit }) =>
			`A score of ${fpi} on the ${side} is ${fpi === limit ? 'at' : 'above'} the upper limit ` +
			`(${limit}) found in children of 6 to 11 years. Children are often more pronated than ` +
			'adults.',
	}),
	'posture.fpi-low': sentence<{ side: Side; fpi: number; limit: number }>({
		clinician: ({ side, fpi, limit }) =>
			`A foot posture index below ${limit} (${side}: ${fpi}) has been associated with more ` +
			'overuse trouble of foot and ankle in one group of futsal boys.',
	}),
	'posture.fpi-asymmetry': sentence<{ gap: number; severe: boolean }>({
		clinician: ({ gap, severe }) =>
			`The foot posture scores differ by ${count(gap, 'point')}: ` +
			`${severe ? 'severe asymmetry' : 'asymmetry'}.`,
	}),
	'posture.navicular-drop': sentence<{ side: Side; dropMm: number; limitMm: number }>({
		clinician: ({ side, dropMm, limitMm }) =>
			`The ${side} navicular drops ${amount(dropMm, 'mm')}, above the ${amount(limitMm, 'mm')} ` +
			'limit in use. Published limits and repeat readings vary widely.',
	}),
	'posture.first-mtp': sentence<{
		side: Side
		verdict: Verdict /** Absent before 0.4. */
		free?: boolean
	}>({
		clinician: ({ side, ...joint }) => `The ${side} big toe joint ${held(joint)}.`,
		player: ({ side, verdict, free }) =>
			verdict === 'functional-limit' && free !== false
				? `Your ${side} big toe bends well, but less when you stand.`
				: `Your ${side} big toe does not bend up far.`,
		doctor: ({ side, ...joint }) => `The ${side} first metatarsophalangeal joint ${held(joint)}.`,
	}),
	'posture.first-mtp-grey': sentence<{ side: Side }>({
		clinician: ({ side }) =>
			`The ${side} big toe joint is in the grey zone: neither clearly free nor clearly limited.`,
	}),
	'posture.first-ray': sentence<{
		side: Side
		firstRay: keyof typeof rayWords
		excessMm: number
	}>({
		clinician: ({ side, firstRay, excessMm }) =>
			`The ${side} first ray is ${firstRay}: ${rayWords[firstRay](excessMm)}. The hand test has ` +
			'poor agreement between examiners.',
		laboratory: ({ side, firstRay }) => `The ${side} first ray is ${firstRay} on the hand test.`,
	}),
	'posture.heel-rises': sentence<{ side: Side; rises: number; published: number }>({
		clinician: ({ side, rises, published }) =>
			`The ${side} leg made ${count(rises, 'heel rise')}, far below the median of ` +
			`${number(published)} for this age and sex; half of healthy people lie below a median.`,
		player: ({ side }) => `Your ${side} leg did fewer heel rises than most people of your age.`,
	}),
	'posture.heel-rises-again': sentence<{
		side: Side
		rises: number
		limit: number
		mean: number
	}>({
		clinician: ({ side, rises, limit, mean }) =>
			`The ${side} leg made ${count(rises, 'heel rise')}. Healthy children of 7 to 9 years make ` +
			`${number(mean)} on average and differ widely: from ${number(limit)} down repeat the test ` +
			'on another day before anything is made of it.',
	}),
	'posture.recorded-only': sentence<{ side: Side }>({
		clinician: ({ side }) =>
			`The standing tests of the ${side} leg are recorded and compared with nothing: the limb is ` +
			'injured or is not to be tested today.',
	}),
	'posture.heel-rise-gap': sentence<{ weaker: Side; percent: number; leastReal: number }>({
		clinician: ({ percent, leastReal }) =>
			`The legs differ by ${amount(percent, '%')} in heel rises, by more than the ` +
			`${count(leastReal, 'rise')} from which counts differ beyond error between days.`,
		player: ({ weaker }) =>
			`Your ${weaker} leg did fewer heel rises than your ${otherSide(weaker)}.`,
	}),
	'posture.heel-rise-change': sentence<{ side: Side; by: number; since: string }>({
		clinician: ({ side, by, since }) =>
			`The ${side} leg made ${fewerOrMore(by)} than on ${day(since)}: beyond the day-to-day ` +
			'limits, if the cues and the pace were the same.',
		player: ({ side, by, since }) =>
			`Your ${side} leg did ${fewerOrMore(by)} than on ${day(since)}.`,
	}),
	'posture.beighton-maturity': sentence<{ score: number }>({
		clinician: ({ score }) =>
			`A Beighton score of ${score} cannot be judged until the player's maturity is recorded: ` +
			'before, during or after puberty.',
	}),
	'posture.beighton': sentence<{ score: number; cutOff: number; byHistory: boolean }>({
		clinician: ({ score, cutOff, byHistory }) =>
			`The Beighton score is ${score}: generalised hypermobility by the cut-off of ${cutOff} for ` +
			`this maturity${byHistory ? ', counting the history answers' : ''}. It asks for a steady shoe: ` +
			'a firm heel counter, a wide base and a sole that resists twisting; an insert with a softer ' +
			'shell, worn in slowly. It is scored mostly on the arms and says little about the foot.',
		doctor: ({ score, cutOff, byHistory }) =>
			`Generalised joint hypermobility: Beighton score ${score} of 9, cut-off ${cutOff}` +
			`${byHistory ? ', with the history answers' : ''}.`,
	}),
	'posture.beighton-near': sentence<{ score: number; cutOff: number; answers: number }>({
		clinician: ({ score, cutOff, answers }) =>
			`The Beighton score of ${score} is one below the cut-off of ${cutOff}: ask the five history ` +
			`questions; ${count(answers, 'yes answer')} ${plural(answers, 'counts', 'count')}.`,
	}),
	'posture.leg-length-held': sentence<{ differenceMm: number; shorterKnown: boolean }>({
		clinician: ({ differenceMm, shorterKnown }) =>
			together(
				`${legs(differenceMm)} is without symptoms in a growing player: do not correct it ` +
					'from a clinical test alone; measure again or refer.',
				askSide(shorterKnown),
			),
	}),
	'posture.leg-length-waits': sentence<{ differenceMm: number; shorterKnown: boolean }>({
		clinician: ({ differenceMm, shorterKnown }) =>
			together(
				`${legs(differenceMm)} is recorded. Nothing is raised before the review that is asked for.`,
				askSide(shorterKnown),
			),
	}),
	'posture.leg-length-record': sentence<{ differenceMm: number }>({
		clinician: ({ differenceMm }) =>
			`${legs(differenceMm)} is below the error of the clinical test: record it only.`,
	}),
	'posture.leg-length-symptoms': sentence<{
		differenceMm: number
		symptoms: boolean
		start?: Start
		shorterKnown: boolean
	}>({
		clinician: ({ differenceMm, symptoms, start, shorterKnown }) =>
			together(
				`${legs(differenceMm)} is corrected only ` +
					`${symptoms ? 'with symptoms, and symptoms are recorded' : 'where there are symptoms'}.`,
				startWords(start),
				askSide(shorterKnown),
			),
	}),
	'posture.leg-length-consider': sentence<{
		differenceMm: number
		start?: Start
		shorterKnown: boolean
	}>({
		clinician: ({ differenceMm, start, shorterKnown }) =>
			together(
				`${legs(differenceMm)} may be worth correcting.`,
				startWords(start),
				askSide(shorterKnown),
			),
	}),
	'posture.leg-length-refer': sentence<{ differenceMm: number; shorterKnown: boolean }>({
		clinician: ({ differenceMm, shorterKnown }) =>
			together(
				`${legs(differenceMm)} is large: refer for measurement by imaging before correcting.`,
				askSide(shorterKnown),
			),
		player: () =>
			'Your legs may differ in length. This has to be measured by a doctor before anything is ' +
			'changed.',
		doctor: ({ differenceMm }) =>
			`Leg-length difference of ${amount(differenceMm, 'mm')} on the clinical test; measurement ` +
			'by imaging is suggested before any correction.',
	}),
}
/** Names of its numbers that are no measure of the visit. */
export const postureReadings = {
	footPostureIndex: 'foot posture index',
}
