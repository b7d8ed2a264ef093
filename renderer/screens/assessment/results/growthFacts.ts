/** Growth in words: the stage, what it rests on, rates between visits, and when to look again. Pure. */

import type { GrowthResult } from '../../../../shared/engine/findings/assessment.ts'
import { footGrowth } from '../../../../shared/engine/growth/velocity.ts'
import { dayInWords } from '../../../../shared/engine/plain/days.ts'
import type { Protocol } from '../../../../shared/engine/protocol/protocol.ts'
import type { Visit } from '../../../../shared/engine/visit/visit.ts'
import { number } from '../../../../shared/engine/words/en/format.ts'
import { offsetDrawn } from './growthStrips.ts'

const stages: Readonly<Record<GrowthResult['band'], string>> = {
	before: 'Before the growth spurt',
	around: 'Around the growth spurt',
	after: 'After the growth spurt',
	uncertain: 'Stage uncertain',
}
/** The stage, large: uncertain where two measures disagree, not established where none told. */
export const stageWords = ({ band, stageKnown }: GrowthResult): string =>
	band === 'uncertain' && stageKnown === false ? 'Stage not established' : stages[band]
/** By which of the two measures the stage is told. */
function toldBy({ percentAdultStature: share, band }: GrowthResult, offset: unknown): string {
	if (share === undefined) return 'An estimate, by the maturity offset alone'
	if (offset === undefined) return 'An estimate, by the share of adult stature alone'
	return band === 'uncertain'
		? 'Two estimates: the share of adult stature and the maturity offset disagree'
		: 'An estimate: the share of adult stature and the maturity offset agree'
}
/** What the stage rests on, and how it is to be read. */
export function stageLines(growth: GrowthResult): string[] {
	const { band, stageKnown, maturityOffsetYears, aroundSpurt } = growth
	if (stageKnown === false) return []
	const drawn = offsetDrawn(growth)
	const offset = drawn && maturityOffsetYears[drawn]
	return [
		toldBy(growth, offset),
		offset === undefined
			? ''
			: `Offset: ${number(Math.abs(offset))} years ${offset < 0 ? 'before' : 'past'} fastest growth`,
		band === 'uncertain' && aroundSpurt ? 'Treat as around the growth spurt' : '',
	].filter(Boolean)
}
/** 'Stature 6.4 cm a year, error 1.7 (95 %), since 20 July 2026'. */
export function rateLines(
	growth: GrowthResult,
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): string[] {
	const { velocity } = growth
	const feet = footGrowth(visit, earlier, protocol)
	const before = earlier.filter(({ visitDate }) => visitDate < visit.visitDate)
	if (before.length === 0) return []
	return [
		velocity
			? `Stature: ${number(velocity.cmPerYear)} cm a year, error ${number(velocity.errorCmPerYear)} ` +
				`(95 %), since ${dayInWords(velocity.since)}${velocity.trendOnly ? '; a trend only' : ''}`
			: '',
		feet
			? `Longer foot: ${number(feet.mmPerYear)} mm a year since ${dayInWords(feet.since)}` +
				(feet.real ? '' : '; within measuring error')
			: '',
	].filter(Boolean)
}
/** What it means for the footwear: when the feet are measured again, and which pair runs out. */
export function reviewLines({ toeRoom }: GrowthResult, nameOf: (pair: string) => string): string[] {
	return toeRoom.map(({ id, state, toeRoomMm, runsOutOn, earliest }) => {
		const room = `${nameOf(id)}: ${number(toeRoomMm)} mm of room`
		if (state === 'already-short') return `${room}, short already`
		if (earliest === undefined) return `${room}, enough until the foot stops growing`
		return runsOutOn === undefined
			? `${room}, short from ${dayInWords(earliest)} at the earliest`
			: `${room}, short about ${dayInWords(runsOutOn)}, ${dayInWords(earliest)} at the earliest`
	})
}
/** Why no scale is drawn: what is still to be measured, or that no estimate holds. */
export const withoutScale = ({ findings }: GrowthResult): string =>
	findings.some(({ code }) => code === 'growth.offset-missing')
		? 'The age at the growth spurt is drawn here with its error once stature, sitting height and ' +
			"body mass are measured; the share of adult stature once the parents' statures are known."
		: 'No estimate of the stage holds for this player: the findings say why.'
