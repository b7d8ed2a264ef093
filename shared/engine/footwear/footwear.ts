/**
 * The footwear room: what to seek and avoid, where wishes contradict, and the verdict on the pairs
 * in use.
 */

import { lifeShare } from '../facts/life-share.ts'
import type { FeatureWish, FootwearResult } from '../findings/assessment.ts'
import { type Finding, idPart } from '../findings/finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { meanOf } from '../visit/sides.ts'
import { type Feature, termWords } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { type FootwearContext, factsOf } from './facts.ts'
import { judgePair } from './pairs.ts'
import { footwearRules } from './rules.ts'

const opposites: readonly (readonly [Feature, Feature])[] = [
	['firm-heel-counter', 'soft-heel-counter'],
	['stiff-forefoot', 'flexible-forefoot'],
	['wide-fitting', 'narrow-fitting'],
	['raised-heel', 'low-heel'],
	['round-studs', 'bladed-studs'],
	['long-studs', 'short-studs'],
	['high-heel-counter', 'low-heel-collar'],
	['soft-ground-sole', 'artificial-ground-sole'],
	['indoor-sole', 'firm-ground-sole'],
	['low-mass', 'full-length-cushioning'],
]

/**
 * @param context the results of the rooms it draws on; each wish names its rule, reasons and basis
 */
export function footwear(
	visit: Visit,
	context: FootwearContext,
	protocol: Protocol,
): FootwearResult {
	const facts = factsOf(visit, context, protocol)
	const seek: FeatureWish[] = [],
		avoid: FeatureWish[] = [],
		findings: Finding[] = []
	for (const rule of footwearRules) {
		const because = rule.when(facts)
		if (because.length === 0) continue
		const key = rule.basis.threshold
		const basis = key
			? protocol.basis(rule.id, key)
			: { rule: rule.id, source: rule.basis.source, strength: rule.basis.strength }
		const wish = (feature: Feature): FeatureWish => ({
			feature,
			because,
			basis,
			says: rule.says,
			rule: rule.id,
		})
		seek.push(...rule.seek.map(wish))
		avoid.push(...rule.avoid.map(wish))
		findings.push({
			id: `footwear.${rule.id}`,
			topic: 'footwear',
			side: 'none',
			level: 'advise',
			says: rule.says,
			because,
			basis,
		})
	}
	const contradictions = contradictionsOf(seek, avoid)
	for (const contradiction of contradictions)
		findings.push({
			id: `footwear.contradiction-${contradiction.feature}`,
			topic: 'footwear',
			side: 'none',
			level: 'caution',
			says: contradiction.says,
			because: [],
			basis: {
				rule: 'contradicting wishes',
				source: 'comparison of the rules that apply',
				strength: 'practice',
			},
		})
	const lengths = (['left', 'right'] as const)
		.map((side) => context.sizing[side].lengthMm ?? meanOf(visit.feet?.[side]?.heelToToeMm))
		.filter((one) => one !== undefined)
	const current = (visit.footwear ?? []).map((pair) =>
		judgePair(
			pair,
			lengths.length === 0 ? undefined : Math.max(...lengths),
			visit.feet?.sockMm ?? 0,
			facts.adult,
			protocol,
			{
				visitDate: visit.visitDate,
				lifeShare: lifeShare(visit, protocol),
				toeRoom: context.growth?.toeRoom.find((forecast) => forecast.id === pair.id),
				...(context.ankle.offsetMm ? { offsetMinMm: context.ankle.offsetMm.min } : {}),
			},
		),
	)
	for (const pair of current)
		if (pair.verdict === 'replace' || pair.verdict === 'change')
			findings.push({
				id: `footwear.pair-${idPart(pair.id, current.indexOf(pair))}`,
				topic: 'footwear',
				side: 'none',
				level: 'advise',
				says:
					`${visit.footwear?.find((one) => one.id === pair.id)?.name ?? `Pair ${pair.id}`}: ` +
					`${pair.says}`,
				because:
					pair.toeRoomMm === undefined
						? []
						: [{ measure: 'Toe room', value: pair.toeRoomMm, unit: 'mm' }],
				basis: protocol.basis(
					'pairs in use',
					facts.adult ? 'footwear.adultTightMm' : 'footwear.youthReplaceMm',
				),
			})
	findings.push(...rotationFindings(visit, protocol))
	return { target: { seek, avoid }, contradictions, current, ranked: [], findings }
}

/**
 * Two roles for footwear in a week of training and matches, and enough pairs for several matches:
 * common practice, no source.
 */
function rotationFindings(visit: Visit, protocol: Protocol): Finding[] {
	const { matchesPerWeek: matches = 0, trainingsPerWeek: trainings = 0 } = visit.play ?? {}
	const boots = (visit.footwear ?? []).filter(
		(pair) => pair.sole !== 'road' && pair.sole !== 'trail',
	).length
	const because = [
		{ measure: 'Matches a week', value: matches },
		...(trainings > 0 ? [{ measure: 'Trainings a week', value: trainings }] : []),
	]
	const say = (
		id: string,
		level: Finding['level'],
		says: string,
		basis: Finding['basis'],
	): Finding => ({
		id: `footwear.${id}`,
		topic: 'footwear',
		side: 'none',
		level,
		says,
		because,
		basis,
	})
	return [
		...(matches > 0 && trainings > 0
			? [
					say(
						'two-roles',
						'note',
						'Two roles for footwear: training and pre-season want a cushioned, steadier pair (a ' +
							'trail trainer with lugs serves); for matches a lighter, lower one will do. Common ' +
							'practice, no source.',
						{
							rule: 'a pair for training and a pair for matches',
							source: 'common practice, no source',
							strength: 'practice',
						},
					),
				]
			: []),
		...(matches >= protocol.value('footwear.matchesTwoPairs') && boots < 2
			? [
					say(
						'two-pairs',
						'advise',
						`${matches} matches a week: at least two pairs of boots, so that each can dry and ` +
							`the load on the foot varies. Recorded: ${boots === 0 ? 'none' : 'one'}.`,
						protocol.basis('pairs for several matches a week', 'footwear.matchesTwoPairs'),
					),
				]
			: []),
	]
}

/** A feature both sought and avoided, or both of an opposite pair sought. */
export function contradictionsOf(
	seek: readonly FeatureWish[],
	avoid: readonly FeatureWish[],
): FootwearResult['contradictions'] {
	const rulesOf = (wishes: readonly FeatureWish[], feature: Feature) =>
		[
			...new Set(
				wishes.filter((wish) => wish.feature === feature).map((wish) => termWords(wish.rule)),
			),
		].join(', ')
	const both = [...new Set(seek.map((wish) => wish.feature))].filter((feature) =>
		avoid.some((wish) => wish.feature === feature),
	)
	return [
		...both.map((feature) => ({
			feature,
			says:
				`${termWords(feature)} is wanted (${rulesOf(seek, feature)}) and to be avoided ` +
				`(${rulesOf(avoid, feature)}): weigh the reasons and decide.`,
		})),
		...opposites
			.filter(([a, b]) => rulesOf(seek, a) !== '' && rulesOf(seek, b) !== '')
			.map(([a, b]) => ({
				feature: a,
				says:
					`${termWords(a)} (${rulesOf(seek, a)}) and ${termWords(b)} (${rulesOf(seek, b)}) ` +
					'are both wanted: weigh the reasons and decide.',
			})),
	]
}
