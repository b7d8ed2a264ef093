/** The growth stage, and which growing parts to ask about at it. */
import type { GrowthResult } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import { linesOf } from '../findings/working.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import { finding } from './says.ts'

type Stage = 'before' | 'around' | 'after'
/** Before, around or after, inclusive on around. @internal */
export function bandOf(value: number, low: number, high: number): Stage {
	if (value < low) return 'before'
	return value > high ? 'after' : 'around'
}
const words: Record<Stage, string> = {
	before: 'before the growth spurt',
	around: 'around the growth spurt',
	after: 'after the growth spurt',
}

const percentReason = (percent: number | undefined): Because[] =>
	percent === undefined
		? []
		: [{ measure: 'Share of predicted adult stature', value: rounded(percent, 1), unit: '%' }]
const offsetReason = (offset: number | undefined): Because[] =>
	offset === undefined
		? []
		: [{ measure: 'Maturity offset', value: rounded(offset, 1), unit: 'years' }]

/** The finding that names the stage; its level and words follow from how the two measures agree. */
function stageFinding(
	byPercent: Stage | undefined,
	byOffset: Stage | undefined,
	protocol: Protocol,
): Pick<Finding, 'id' | 'level' | 'says'> & { band: GrowthResult['band'] } {
	const settled = byPercent ?? byOffset
	if (settled === undefined)
		return {
			band: 'uncertain',
			id: 'growth.stage-unknown',
			level: 'note',
			says:
				'The growth stage cannot be judged: too few measures, or the player lies outside the ' +
				'limits of the equations.',
		}
	if (byPercent && byOffset && byPercent !== byOffset)
		return {
			band: 'uncertain',
			id: 'growth.uncertain',
			level: 'caution',
			says:
				`The growth stage is uncertain: by adult stature ${words[byPercent]}, by maturity ` +
				`offset ${words[byOffset]}. Treat the player as around the growth spurt.`,
		}
	const errors = linesOf(
		byPercent && 'It rests on the share of predicted adult stature, which has an error of its own.',
		byOffset &&
			`The offset is good to about ${protocol.value('growth.offsetErrorYears')} years ` +
				'either way.',
	)
	return {
		band: settled,
		id: 'growth.stage',
		level: settled === 'around' ? 'advise' : 'note',
		says: `The player is probably ${words[settled]}. ${errors.join(' ')}`,
	}
}
/**
 * The stage: by percentage of adult stature first, else by offset; where they disagree, uncertain.
 */
export function stage(
	percent: number | undefined,
	offset: number | undefined,
	protocol: Protocol,
): { band: GrowthResult['band']; findings: Finding[] } {
	const lowPercent = protocol.value('growth.percentAroundMin')
	const highPercent = protocol.value('growth.percentAroundMax')
	const aroundYears = protocol.value('growth.offsetAroundYears')
	const byPercent = percent === undefined ? undefined : bandOf(percent, lowPercent, highPercent)
	const byOffset = offset === undefined ? undefined : bandOf(offset, -aroundYears, aroundYears)
	const { band, id, level, says } = stageFinding(byPercent, byOffset, protocol)
	const named = finding(
		id,
		level,
		says,
		[...percentReason(percent), ...offsetReason(offset)],
		protocol.basis(
			'growth stage',
			byPercent ? 'growth.percentAroundMin' : 'growth.offsetAroundYears',
		),
	)
	if (id === 'growth.stage-unknown') return { band, findings: [named] }
	const asked = band === 'uncertain' ? 'around' : band
	return { band, findings: [named, ...prompts(percent, asked, protocol)] }
}

/** Which growing parts to ask about, by stage: foot first, then knee, then hip. */
function prompts(percent: number | undefined, band: Stage, protocol: Protocol): Finding[] {
	const low = protocol.value('growth.kneePromptMinPercent'),
		high = protocol.value('growth.kneePromptMaxPercent')
	const because = percentReason(percent)
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
