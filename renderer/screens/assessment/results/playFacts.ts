/** The player at a glance: the week against the published limits, conditions, pairs owned. Pure. */
import { isAdult } from '../../../../shared/engine/facts/age.ts'
import type { Assessment } from '../../../../shared/engine/findings/assessment.ts'
import type { Protocol } from '../../../../shared/engine/protocol/protocol.ts'
import { ageYears } from '../../../../shared/engine/visit/age.ts'
import { termWords } from '../../../../shared/engine/visit/terms.ts'
import type { Visit } from '../../../../shared/engine/visit/visit.ts'
import { count, number } from '../../../../shared/engine/words/en/format.ts'
import { capital, conditionInWords } from '../../../../shared/engine/words/words.ts'
import { nameOfPair } from '../decide/proposedFields.ts'
import { ownedInShort } from '../ownedInShort.ts'

export interface LoadRow {
	key: string
	name: string
	says: string
	/** Up to what. */
	limit: string
	/** The room of the load found it beyond. */
	beyond: boolean
}
interface LoadLimit {
	/** What the room of the load says of it. */
	code: string
	name: string
	/** Undefined where it was not recorded. */
	value: (play: NonNullable<Visit['play']>) => string | undefined
	limit: (visit: Visit, protocol: Protocol) => string
}
const hours = (value: number | undefined): string | undefined =>
	value === undefined ? undefined : number(value)
const limits: readonly LoadLimit[] = [
	{
		code: 'loading.hours-over-age',
		name: 'Organised sport, hours a week',
		value: ({ organisedHoursPerWeek }) => hours(organisedHoursPerWeek),
		limit: ({ player, visitDate }, protocol) => {
			const years = ageYears(player.birthDate, visitDate)
			return `${number(years + protocol.value('loading.hoursOverAge'))}, by age`
		},
	},
	{
		code: 'loading.hours-high',
		name: 'Sport in all, hours a week',
		value: ({ organisedHoursPerWeek: organised, freePlayHoursPerWeek: free }) =>
			organised === undefined || free === undefined ? undefined : number(organised + free),
		limit: (_, protocol) => number(protocol.value('loading.hoursMax')),
	},
	{
		code: 'loading.organised-to-free',
		name: 'Organised to free play',
		value: ({ organisedHoursPerWeek: organised, freePlayHoursPerWeek: free }) => {
			if (organised === undefined || free === undefined) return undefined
			return free === 0 ? 'no free play' : `${number(organised / free)} to 1`
		},
		limit: (_, protocol) => `${number(protocol.value('loading.organisedToFreeMax'))} to 1`,
	},
	{
		code: 'loading.one-sport',
		name: 'Months a year in one sport',
		value: ({ monthsPerYearInOneSport }) => hours(monthsPerYearInOneSport),
		limit: (_, protocol) => number(protocol.value('loading.monthsInOneSport')),
	},
	{
		code: 'loading.no-day-off',
		name: 'Days a week without sport',
		value: ({ daysOffPerWeek }) => hours(daysOffPerWeek),
		limit: (_, protocol) => `${number(protocol.value('loading.daysOffPerWeek'))} or more`,
	},
]
/**
 * What was recorded of the week, each against the limit that is published for the young; none for
 * an adult, whom no limit was found for.
 */
export function loadRows(
	{ loading }: Pick<Assessment, 'loading'>,
	visit: Visit,
	protocol: Protocol,
): LoadRow[] {
	if (isAdult(visit, protocol)) return []
	return limits.flatMap(({ code, name, value, limit }) => {
		const says = value(visit.play ?? {})
		if (says === undefined) return []
		return [
			{
				key: code,
				name,
				says,
				limit: limit(visit, protocol),
				beyond: loading.findings.some((finding) => finding.code === code),
			},
		]
	})
}
/** '1 match and 2 trainings a week'; empty where neither was recorded. */
export function sessionWords({ play }: Pick<Visit, 'play'>): string {
	const { matchesPerWeek: matches, trainingsPerWeek: trainings } = play ?? {}
	const parts = [
		...(matches === undefined ? [] : [count(matches, 'match', 'matches')]),
		...(trainings === undefined ? [] : [count(trainings, 'training')]),
	]
	return parts.length === 0 ? '' : `${parts.join(', ')} a week`
}
/** Of an adult, beside whom no limits stand; empty where it was not recorded. */
export function hoursWords(visit: Visit, protocol: Protocol): string {
	const { organisedHoursPerWeek } = visit.play ?? {}
	if (organisedHoursPerWeek === undefined || !isAdult(visit, protocol)) return ''
	return `${count(organisedHoursPerWeek, 'hour')} of organised sport a week`
}
/** What is played, and as what. */
export const playedWords = ({ play }: Pick<Visit, 'play'>): string =>
	[play?.code && termWords(play.code), play?.position, play?.standard && termWords(play.standard)]
		.filter(Boolean)
		.join(', ')
export const surfaceWords = ({ play }: Pick<Visit, 'play'>): string =>
	(play?.surfaces ?? []).map(termWords).join(', ')
/** 'growing heel, left: current, pain 5/10', as recorded. */
export const conditionLines = ({ conditions = [] }: Pick<Visit, 'conditions'>): string[] =>
	conditions.map((recorded) => {
		const { side, status, painWorst } = recorded
		const name = capital(conditionInWords(recorded, 'clinician'))
		const where = side === 'none' ? '' : `, ${side}`
		const pain = painWorst === undefined ? '' : `, worst pain ${painWorst} of 10`
		return `${name}${where}: ${status ? termWords(status) : 'status not said'}${pain}`
	})
/** 'Match boots: 4.5 mm of room, replace by 1 February 2027'. */
export function pairLines(
	assessment: Pick<Assessment, 'footwear' | 'prescription'>,
	visit: Pick<Visit, 'footwear'>,
): string[] {
	return (visit.footwear ?? []).map(({ id }) => {
		const said = ownedInShort(assessment, id)
		const name = capital(nameOfPair(visit, id))
		return said === '' ? name : `${name}: ${said}`
	})
}
