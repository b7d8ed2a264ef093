/** Is it made for this code of football, and is its heel high enough for this ankle? */
import { offsetOf } from '../../visit/shelf.ts'
import { rounded } from '../../visit/sides.ts'
import { state } from '../../words/statement.ts'
import { type Answer, change, otherChoice, penalty } from './answer.ts'
import type { Fitter, Trial } from './fitter.ts'

/** A model made for other codes costs points; one that names none is for any. */
export function askCode({ model: { codes = [] } }: Trial, { needs, value, basis }: Fitter): Answer {
	const { code } = needs
	if (code === undefined || codes.length === 0 || codes.includes(code)) return {}
	return {
		against: [
			penalty(
				'code',
				state('match.code', { madeFor: codes, code }),
				value('footwear.pointsPractice'),
				[{ measure: 'code', value: code }],
				basis('code of play', 'footwear.pointsPractice'),
			),
		],
	}
}
/** An offset below what the ankle asks for: what a raise inside would have to make up. */
export function askOffset({ model }: Trial, { offsetMm: sought, value }: Fitter): Answer {
	const offsetMm = offsetOf(model)
	if (sought === undefined || offsetMm === undefined || offsetMm >= sought.min) return {}
	const raiseMm = rounded(sought.min - offsetMm, 1)
	const limitMm = value('ankle.raiseWarnMm')
	return {
		changes: [
			raiseMm <= limitMm
				? change(state('match.change-by-raise', { raiseMm, offsetMm, soughtMm: sought.min }))
				: otherChoice(state('match.raise-too-much', { raiseMm, offsetMm, limitMm })),
		],
	}
}
