/** What the risk of a foot in diabetes leads to, foot by foot (NICE NG19). */
import type { Action, DiabeticRisk, ScreeningResult } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import type { DiabetesCare } from '../words/en/screening/diabetes-and-clot.ts'
import { type Statement, state } from '../words/statement.ts'
import {
	type Conclusions,
	itemOf,
	type Screened,
	type StatedItem,
	screeningFinding,
	stateOf,
} from './conclusions.ts'
import { diabeticRisk } from './diabetic.ts'

const basis: Basis = {
	rule: 'diabetic foot risk',
	source: 'NICE NG19 (reviewed 2023, unchanged)',
	strength: 'guideline',
}
const actionOf: Record<DiabeticRisk, Action> = {
	low: 'proceed',
	moderate: 'letter',
	high: 'letter',
	active: 'same-day',
	incomplete: 'proceed',
}
interface FootReading {
	side: Side
	risk: DiabeticRisk
	complete: boolean
	statement: Statement
}

type FootConclusions = Conclusions & { diabeticFoot: ScreeningResult['diabeticFoot'] }

/** Nothing where the questions on diabetes were not opened. */
export function diabeticFootConclusions(screened: Screened): FootConclusions {
	const group = screened.answers.diabeticFoot
	if (!group) return { items: [], findings: [], diabeticFoot: undefined }
	const readings = bothSides.flatMap((side): FootReading[] => {
		const foot = group[side]
		if (!foot) return []
		const { risk, complete } = diabeticRisk(foot, group.renalReplacement)
		return [{ side, risk, complete, statement: pathway(risk, side, screened) }]
	})
	return {
		items: [...readings.map(footItem), ...threatItems(group.limbOrLifeThreat)],
		findings: readings.flatMap(footFindings),
		diabeticFoot: Object.fromEntries(readings.map(({ side, risk }) => [side, risk])),
	}
}
function careOf({ ageYears, minor, protocol }: Screened): DiabetesCare {
	if (ageYears < protocol.value('screening.diabetesAdviceBelowYears')) return 'family'
	return minor ? 'paediatric-team' : 'usual'
}
const moderate = (protocol: Protocol) => ({
	seenWeeks: [
		protocol.value('screening.diabetesModerateSeenFromWeeks'),
		protocol.value('screening.diabetesModerateSeenToWeeks'),
	] as const,
	reviewMonths: [
		protocol.value('screening.diabetesModerateReviewFromMonths'),
		protocol.value('screening.diabetesModerateReviewToMonths'),
	] as const,
})
const high = (protocol: Protocol) => ({
	seenWeeks: [
		protocol.value('screening.diabetesHighSeenFromWeeks'),
		protocol.value('screening.diabetesHighSeenToWeeks'),
	] as const,
	reviewMonths: [
		protocol.value('screening.diabetesHighReviewFromMonths'),
		protocol.value('screening.diabetesHighReviewToMonths'),
	] as const,
})
function pathway(risk: DiabeticRisk, side: Side, screened: Screened): Statement {
	const { protocol } = screened
	const foot = {
		side,
		care: careOf(screened),
		belowYears: protocol.value('screening.diabetesAdviceBelowYears'),
		minorBelowYears: protocol.value('screening.minorBelowYears'),
	}
	const pathways: Record<DiabeticRisk, () => Statement> = {
		low: () => state('screening.diabetic-foot-low', foot),
		moderate: () => state('screening.diabetic-foot-moderate', { ...foot, ...moderate(protocol) }),
		high: () => state('screening.diabetic-foot-high', { ...foot, ...high(protocol) }),
		active: () =>
			state('screening.diabetic-foot-active', {
				...foot,
				days: protocol.value('screening.ulcerSeenDays'),
			}),
		incomplete: () => state('screening.diabetic-foot-incomplete', foot),
	}
	return pathways[risk]()
}
function footItem({ side, risk, statement }: FootReading): StatedItem {
	const action = actionOf[risk]
	return itemOf(statement, {
		side,
		state: stateOf(risk === 'incomplete' ? undefined : action !== 'proceed'),
		action,
		basis,
		id: `screening.diabetic-foot.${side}`,
	})
}
/** A foot that calls for nobody is still said; one that does, where a question is open. */
function footFindings({ side, risk, complete, statement }: FootReading): Finding[] {
	if (actionOf[risk] === 'proceed')
		return [
			screeningFinding(statement, {
				side,
				level: risk === 'incomplete' ? 'caution' : 'note',
				basis,
			}),
		]
	if (complete) return []
	return [
		screeningFinding(state('screening.diabetic-foot-open', { side, risk }), {
			side,
			level: 'caution',
			basis,
		}),
	]
}
function threatItems(limbOrLifeThreat: boolean | undefined): StatedItem[] {
	if (limbOrLifeThreat === undefined) return []
	return [
		itemOf(state('screening.diabetic-threat'), {
			side: 'none',
			state: stateOf(limbOrLifeThreat),
			action: limbOrLifeThreat ? 'emergency' : 'proceed',
			basis,
		}),
	]
}
