/**
 * The footwear room: what to seek and avoid, where wishes contradict, and the verdict on the pairs
 * in use.
 */

import { isHeld, openGate } from '../facts/held.ts'
import { isTrainer } from '../facts/trainer.ts'
import type { FeatureWish, FootwearResult } from '../findings/assessment.ts'
import { type Finding, idPart, reading } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import { commonPractice } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Feature } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { askedByConditions } from './condition-wishes.ts'
import { contradictionsOf } from './contradictions.ts'
import { type Facts, type FootwearContext, factsOf } from './facts.ts'
import { footwearFinding } from './finding.ts'
import { pairPicture } from './pair/of-player.ts'
import { type JudgedPair, judgedPair } from './pairs.ts'
import {
	type FootwearRule,
	groundsOf,
	rankFor,
	reasonsOf,
	sentenceOf,
	severityOf,
} from './rules/rule.ts'
import { footwearRules } from './rules/rules.ts'
import { settle } from './settle.ts'

/**
 * @param context the results of the rooms it draws on; each wish names its rule, reasons and basis
 */
export function footwear(
	visit: Visit,
	context: FootwearContext,
	protocol: Protocol,
): FootwearResult {
	const facts = factsOf(visit, context, protocol)
	const applied: Application[] = [
		...footwearRules.flatMap((rule) => applicationOf(rule, facts, protocol)),
		...askedByConditions(visit, protocol),
	]
	const seek = applied.flatMap((application) => application.seek)
	const avoid = applied.flatMap((application) => application.avoid)
	const mayBuy = !isHeld(context.gate ?? openGate, 'purchase')
	const current = pairsInUse(visit, context, protocol)
	return {
		target: { seek, avoid },
		contradictions: contradictionsOf(seek, avoid),
		settled: settle(seek, avoid).settled,
		current,
		ranked: [],
		findings: [
			...applied.filter(({ protects }) => mayBuy || protects).map(({ finding }) => finding),
			...pairFindings(visit, current, protocol),
			...(mayBuy ? rotationFindings(visit, protocol) : []),
		],
	}
}
interface Application {
	seek: FeatureWish[]
	avoid: FeatureWish[]
	finding: Finding
	/** What protects a foot is told while nothing may be bought. */
	protects?: true
}
/** What a rule wishes and says where it applies. */
function applicationOf(rule: FootwearRule, facts: Facts, protocol: Protocol): Application[] {
	const because = reasonsOf(rule, facts)
	if (because.length === 0) return []
	const { id } = rule
	const statement = sentenceOf(rule, facts, protocol)
	const { threshold, ...ground } = rule.basis
	const basis = threshold ? protocol.basis(id, threshold) : { rule: id, ...ground }
	const rank = rankFor(rule, facts)
	const isStrict = (feature: Feature): boolean =>
		rank !== 'recurrent-injury' && rule.strict?.includes(feature) === true
	const wish = (feature: Feature): FeatureWish =>
		present({
			feature,
			because,
			basis: rule.practiceOnly?.includes(feature) ? { rule: id, ...commonPractice } : basis,
			...statement,
			rule: id,
			rank,
			severity: rank === 'injury-now' ? severityOf(rule, facts, protocol) : undefined,
			strict: isStrict(feature) ? true : undefined,
			grounds: groundsOf(rule, facts)?.slice(),
			roles: rule.roles?.slice(),
		})
	return [
		{
			seek: rule.seek.map(wish),
			avoid: rule.avoid.map(wish),
			finding: footwearFinding(id, 'advise', statement, because, basis),
			...(rule.protects ? { protects: true as const } : {}),
		},
	]
}
const pairsInUse = (visit: Visit, context: FootwearContext, protocol: Protocol): JudgedPair[] => {
	const picture = pairPicture(visit, context, protocol)
	return (visit.footwear ?? []).map((pair) => judgedPair(pair, picture, protocol))
}
/** Not to be worn, or not before it is mended: read before anything is settled. */
const isLeftOff = ({ params }: JudgedPair): boolean =>
	params.said.some(
		({ code, params: said }) => code === 'owned.stop-wearing' || said.mendFirst === true,
	)
/** Pairs that something should be done about. */
function pairFindings(visit: Visit, current: readonly JudgedPair[], protocol: Protocol): Finding[] {
	const basis = protocol.basis('pairs in use', 'sizing.bandErrorMm')
	const nameOf = ({ id }: JudgedPair) =>
		visit.footwear?.find((pair) => pair.id === id)?.name ?? `Pair ${id}`
	return [...current.entries()]
		.filter(([, { verdict }]) => verdict === 'replace' || verdict === 'change')
		.map(([index, pair]) =>
			footwearFinding(
				`pair-${idPart(pair.id, index)}`,
				isLeftOff(pair) ? 'caution' : 'advise',
				state('footwear.pair', { pair: nameOf(pair), said: pair.params.said }),
				pair.toeRoomMm === undefined ? [] : [reading('toeRoomMm', pair.toeRoomMm, 'mm')],
				basis,
			),
		)
}

/**
 * Two roles for footwear in a week of training and matches, and enough pairs for several matches:
 * common practice, no source.
 */
function rotationFindings(visit: Visit, protocol: Protocol): Finding[] {
	const { matchesPerWeek: matches = 0, trainingsPerWeek: trainings = 0 } = visit.play ?? {}
	const boots = (visit.footwear ?? []).filter((pair) => !isTrainer(pair)).length
	const because = [
		{ measure: 'matchesPerWeek', value: matches },
		...(trainings > 0 ? [{ measure: 'trainingsPerWeek', value: trainings }] : []),
	]
	const findings: Finding[] = []
	if (matches > 0 && trainings > 0)
		findings.push(
			footwearFinding('two-roles', 'note', state('footwear.two-roles'), because, {
				rule: 'a pair for training and a pair for matches',
				...commonPractice,
			}),
		)
	if (matches >= protocol.value('footwear.matchesTwoPairs') && boots < 2)
		findings.push(
			footwearFinding(
				'two-pairs',
				'advise',
				state('footwear.two-pairs', { matchesPerWeek: matches, boots }),
				because,
				protocol.basis('pairs for several matches a week', 'footwear.matchesTwoPairs'),
			),
		)
	return findings
}
