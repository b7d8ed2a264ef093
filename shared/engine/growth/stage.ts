import type { GrowthResult } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import { finding } from './says.ts'

type Stage = 'before' | 'around' | 'after'
/** Before, around or after, inclusive on around. */
export const bandOf = (value: number, low: number, high: number): Stage =>
	value < low ? 'before' : value > high ? 'after' : 'around'
const words: Record<Stage, string> = {
	before: 'before the growth spurt',
	around: 'around the growth spurt',
	after: 'after the growth spurt',
}

/**
 * The stage: by percentage of adult stature first, else by offset; where they disagree, uncertain.
 */
export function stage(
	percent: number | undefined,
	offset: number | undefined,
	protocol: Protocol,
): { band: GrowthResult['band']; findings: Finding[] } {
	const around = protocol.value('growth.offsetAroundYears')
	const byPercent =
		percent === undefined
			? undefined
			: bandOf(
					percent,
					protocol.value('growth.percentAroundMin'),
					protocol.value('growth.percentAroundMax'),
				)
	const byOffset = offset === undefined ? undefined : bandOf(offset, -around, around)
	const because = [
		...(percent === undefined
			? []
			: [{ measure: 'Share of predicted adult stature', value: rounded(percent, 1), unit: '%' }]),
		...(offset === undefined
			? []
			: [{ measure: 'Maturity offset', value: rounded(offset, 1), unit: 'years' }]),
	]
	const basis = protocol.basis(
		'growth stage',
		byPercent ? 'growth.percentAroundMin' : 'growth.offsetAroundYears',
	)
	const settled = byPercent ?? byOffset
	if (settled === undefined)
		return {
			band: 'uncertain',
			findings: [
				finding(
					'growth.stage-unknown',
					'note',
					'The growth stage cannot be judged: too few measures, or the player lies outside the ' +
						'limits of the equations.',
					because,
					basis,
				),
			],
		}
	const errors = [
		...(byPercent
			? ['It rests on the share of predicted adult stature, which has an error of its own.']
			: []),
		...(byOffset
			? [
					`The offset is good to about ${protocol.value('growth.offsetErrorYears')} years ` +
						'either way.',
				]
			: []),
	]
	if (byPercent && byOffset && byPercent !== byOffset)
		return {
			band: 'uncertain',
			findings: [
				finding(
					'growth.uncertain',
					'caution',
					`The growth stage is uncertain: by adult stature ${words[byPercent]}, by maturity ` +
						`offset ${words[byOffset]}. Treat the player as around the growth spurt.`,
					because,
					basis,
				),
				...prompts(percent, 'around', protocol),
			],
		}
	return {
		band: settled,
		findings: [
			finding(
				'growth.stage',
				settled === 'around' ? 'advise' : 'note',
				`The player is probably ${words[settled]}. ${errors.join(' ')}`,
				because,
				basis,
			),
			...prompts(percent, settled, protocol),
		],
	}
}

/** Which growing parts to ask about, by stage: foot first, then knee, then hip. */
function prompts(percent: number | undefined, band: Stage, protocol: Protocol): Finding[] {
	const low = protocol.value('growth.kneePromptMinPercent'),
		high = protocol.value('growth.kneePromptMaxPercent')
	const because =
		percent === undefined
			? []
			: [{ measure: 'Share of predicted adult stature', value: rounded(percent, 1), unit: '%' }]
	const parts = [
		{
			id: 'foot',
			applies:
				percent === undefined
					? band !== 'after'
					: percent < protocol.value('growth.percentAroundMin'),
			key: 'growth.percentAroundMin',
			says:
				'At this stage ask about and feel the growing heel and the base of the fifth ' +
				'metatarsal.',
		},
		{
			id: 'knee',
			applies: percent === undefined ? band === 'around' : percent >= low && percent <= high,
			key: 'growth.kneePromptMinPercent',
			says: 'At this stage ask about and feel the growing bone below the kneecap.',
		},
		{
			id: 'hip',
			applies: percent === undefined ? band === 'after' : percent > high,
			key: 'growth.kneePromptMaxPercent',
			says: 'At this stage ask about the growing bone around hip and groin.',
		},
	] as const
	return parts
		.filter((part) => part.applies)
		.map((part) =>
			finding(
				`growth.apophysis-${part.id}`,
				'note',
				part.says,
				because,
				protocol.basis('growing bone by stage', part.key),
			),
		)
}
