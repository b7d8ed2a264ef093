import type { OttawaState } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Injury } from '../visit/visit.ts'
import type { OttawaBar } from '../words/en/screening/injury.ts'
import { allOf, anyOf, type Tri } from './answers.ts'

/**
 * Film if zone pain and (bone tenderness, or unable to bear weight both then and now). Not met only
 * where every question was asked: an open one never counts as no.
 * @internal
 */
export function filmNeeded(
	zonePain: Tri,
	tender: Tri,
	unableThen: Tri,
	unableNow: Tri,
): OttawaState {
	const film = allOf(zonePain, anyOf(tender, allOf(unableThen, unableNow)))
	if (film === true) return 'met'
	return [zonePain, tender, unableThen, unableNow].includes(undefined) ? 'incomplete' : 'not-met'
}

/**
 * Negative likelihood ratio from sensitivity and specificity (0 to 1): how much a negative test
 * lowers the odds. @throws RangeError outside 0 to 1
 * @internal
 */
export function negativeLikelihoodRatio(sensitivity: number, specificity: number): number {
	if (!(sensitivity >= 0 && sensitivity <= 1 && specificity > 0 && specificity <= 1))
		throw new RangeError(
			`sensitivity ${sensitivity}, specificity ${specificity}: give numbers from 0 to 1, ` +
				'specificity above 0',
		)
	return (1 - sensitivity) / specificity
}
/**
 * Probability (0 to 1) after a test, from the probability before it and its likelihood ratio.
 * @throws RangeError for a prevalence outside 0 to 1
 */
export function probabilityAfter(before: number, likelihoodRatio: number): number {
	if (!(before >= 0 && before < 1))
		throw new RangeError(`prevalence ${before}: give a number from 0 up to 1`)
	const odds = (before / (1 - before)) * likelihoodRatio
	return odds / (1 + odds)
}

export interface OttawaResult {
	ankle: OttawaState
	foot: OttawaState
	notApplicableBecause: OttawaBar[]
	tenderWithoutPain: boolean
	newlyUnable: boolean
	quiet: boolean
}
/** What of the player bears on the rules. */
interface Whose {
	/** Completed years. */
	ageYears: number
	reducedSensation: Tri
	pregnant: Tri
}
/**
 * Both rules for an injured side (Stiell). Not applicable under 6 years, in pregnancy, after 10
 * days, with reduced sensation or where it cannot be assessed.
 */
export function ottawa(
	injury: Injury,
	{ ageYears, reducedSensation, pregnant }: Whose,
	protocol: Protocol,
): OttawaResult {
	const {
		malleolarZonePain,
		midfootZonePain,
		unableToBearWeightThen: then,
		unableToBearWeightNow: now,
	} = injury
	const ankleTender = anyOf(injury.tenderLateralMalleolus, injury.tenderMedialMalleolus)
	const footTender = anyOf(injury.tenderNavicular, injury.tenderFifthMetatarsalBase)
	const late =
		injury.daysAgo !== undefined && injury.daysAgo > protocol.value('screening.ottawaMaxDays')
	const bars: [OttawaBar, boolean][] = [
		['too-young', ageYears < protocol.value('screening.ottawaMinYears')],
		['pregnant', pregnant === true],
		['cannot-be-assessed', injury.cannotBeAssessed === true],
		['swelling-or-open-skin', injury.swellingOrOpenSkin === true],
		['reduced-sensation', reducedSensation === true],
	]
	const others = bars.filter(([, holds]) => holds).map(([bar]) => bar)
	const why: OttawaBar[] = late ? [...others, 'too-late'] : others
	const applies = why.length === 0
	return {
		ankle: applies ? filmNeeded(malleolarZonePain, ankleTender, then, now) : 'not-applicable',
		foot: applies ? filmNeeded(midfootZonePain, footTender, then, now) : 'not-applicable',
		notApplicableBecause: why,
		tenderWithoutPain:
			(malleolarZonePain !== true && ankleTender === true) ||
			(midfootZonePain !== true && footTender === true),
		// pain that was not asked about is not taken for no pain
		newlyUnable: now === true && anyOf(malleolarZonePain, midfootZonePain) !== false,
		// An old injury without pain, tenderness or loss of weight bearing is no reason for a same-day
		// referral.
		quiet:
			others.length === 0 &&
			anyOf(malleolarZonePain, midfootZonePain, ankleTender, footTender, then, now) === false,
	}
}
