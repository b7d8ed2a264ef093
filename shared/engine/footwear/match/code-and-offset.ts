/** Is it made for this code of football, and is its heel high enough for this ankle? */
import { offsetOf } from '../../visit/shelf.ts'
import { rounded } from '../../visit/sides.ts'
import { termWords } from '../../visit/terms.ts'
import { type Answer, listed, penalty } from './answer.ts'
import type { Fitter, Trial } from './fitter.ts'

/** A model made for other codes costs points; one that names none is for any. */
export function askCode({ model: { codes = [] } }: Trial, { needs, value, basis }: Fitter): Answer {
	const { code } = needs
	if (code === undefined || codes.length === 0 || codes.includes(code)) return {}
	return {
		against: [
			penalty(
				'code',
				`Made for ${listed(codes.map(termWords))}, not for ${termWords(code)}: check base and ` +
					'studs for the task.',
				value('footwear.pointsPractice'),
				[{ measure: 'Code', value: termWords(code) }],
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
				? {
						says:
							`A heel raise of ${raiseMm} mm inside brings the ${offsetMm} mm offset to ` +
							`${sought.min} mm.`,
						toThisModel: true,
					}
				: {
						says:
							`Its offset is ${offsetMm} mm; the ${raiseMm} mm of heel raise it lacks is above ` +
							`the ${limitMm} mm limit in use.`,
						toThisModel: false,
					},
		],
	}
}
