/** The growth stage, and which growing parts to ask about at it. */
import type { GrowthResult } from '../findings/assessment.ts'
import { type Finding, type Level, reading } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { type Statement, state } from '../words/statement.ts'
import { growthFinding } from './says.ts'

type Stage = 'before' | 'around' | 'after'
/** Before, around or after, inclusive on around. @internal */
export function bandOf(value: number, low: number, high: number): Stage {
	if (value < low) return 'before'
	return value > high ? 'after' : 'around'
}
const percentReason = (percent: number | undefined): Because[] =>
	percent === undefined ? [] : [reading('percentAdultStature', percent, '%')]
const offsetReason = (offset: number | undefined): Because[] =>
	offset === undefined ? [] : [reading('maturityOffsetYears', offset, 'years')]

interface Judged {
	band: GrowthResult['band']
	level: Level
	statement: Statement
}
/** Which stage it is; level and statement follow from how the two measures agree. */
function judged(
	byPercent: Stage | undefined,
	byOffset: Stage | undefined,
	protocol: Protocol,
): Judged {
	const settled = byPercent ?? byOffset
	if (settled === undefined)
		return { band: 'uncertain', level: 'note', statement: state('growth.stage-unknown') }
	if (byPercent && byOffset && byPercent !== byOffset)
		return {
			band: 'uncertain',
			level: 'advise',
			statement: state('growth.uncertain', { byPercent, byOffset }),
		}
	const offsetErrorYears = byOffset && protocol.value('growth.offsetErrorYears')
	return {
		band: settled,
		level: settled === 'around' ? 'advise' : 'note',
		statement: state(
			'growth.stage',
			present({ stage: settled, byPercent: byPercent !== undefined, offsetErrorYears }),
		),
	}
}
export interface Reached {
	band: GrowthResult['band']
	stageKnown: boolean
	aroundSpurt?: true
	findings: Finding[]
}
/** What is not known is not said to be around the spurt; nor is an offset that bears little. */
function isAround(byPercent: Stage | undefined, byOffset: Stage | undefined, bestAge: boolean) {
	if (byPercent === 'around') return true
	if (!bestAge) return false
	return byOffset === 'around' || (byPercent && byOffset && byPercent !== byOffset)
}
/**
 * The stage: by percentage of adult stature first, else by offset; where they disagree, uncertain.
 * @param bestAge the player is of the ages at which the offset is most useful
 */
export function stage(
	percent: number | undefined,
	offset: number | undefined,
	protocol: Protocol,
	bestAge = true,
): Reached {
	const lowPercent = protocol.value('growth.percentAroundMin')
	const highPercent = protocol.value('growth.percentAroundMax')
	const aroundYears = protocol.value('growth.offsetAroundYears')
	const byPercent = percent === undefined ? undefined : bandOf(percent, lowPercent, highPercent)
	const byOffset = offset === undefined ? undefined : bandOf(offset, -aroundYears, aroundYears)
	const { band, level, statement } = judged(byPercent, byOffset, protocol)
	const named = growthFinding(
		statement,
		level,
		[...percentReason(percent), ...offsetReason(offset)],
		protocol.basis(
			'growth stage',
			byPercent ? 'growth.percentAroundMin' : 'growth.offsetAroundYears',
		),
	)
	if (!byPercent && !byOffset) return { band, stageKnown: false, findings: [named] }
	const asked = band === 'uncertain' ? 'around' : band
	return {
		band,
		stageKnown: true,
		...(isAround(byPercent, byOffset, bestAge) ? { aroundSpurt: true as const } : {}),
		findings: [named, ...prompts(percent, asked, protocol)],
	}
}

/** Which growing parts to ask about, by stage: foot first, then knee, then hip. */
function prompts(percent: number | undefined, band: Stage, protocol: Protocol): Finding[] {
	const low = protocol.value('growth.kneePromptMinPercent'),
		high = protocol.value('growth.kneePromptMaxPercent')
	const because = percentReason(percent)
	const parts = [
		{
			code: 'growth.apophysis-foot',
			applies:
				percent === undefined
					? band !== 'after'
					: percent < protocol.value('growth.percentAroundMin'),
			key: 'growth.percentAroundMin',
		},
		{
			code: 'growth.apophysis-knee',
			applies: percent === undefined ? band === 'around' : percent >= low && percent <= high,
			key: 'growth.kneePromptMinPercent',
		},
		{
			code: 'growth.apophysis-hip',
			applies: percent === undefined ? band === 'after' : percent > high,
			key: 'growth.kneePromptMaxPercent',
		},
	] as const
	return parts
		.filter((part) => part.applies)
		.map((part) =>
			growthFinding(
				state(part.code),
				'note',
				because,
				protocol.basis('growing bone by stage', part.key),
			),
		)
}
