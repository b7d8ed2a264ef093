/** Is it deep enough over the toes, with the insert inside? */
import type { Model } from '../../visit/shelf.ts'
import { rounded } from '../../visit/sides.ts'
import { state } from '../../words/statement.ts'
import { type Answer, change, mm, penalty, reason } from './answer.ts'
import type { Fitter, Trial } from './fitter.ts'
import type { Needs } from './needs.ts'

/** An insert in place of the liner gains what the liner took, mm. */
const linerOutMm = (model: Model, { insert }: Needs): number =>
	insert && model.removableLiner ? (model.linerThicknessMm ?? 0) : 0

/**
 * Toe-box depth less toes and insert, mm to 0.1; undefined where shelf or visit does not tell it.
 */
export const depthMarginIn = (model: Model, needs: Needs): number | undefined =>
	needs.depthMm === undefined || model.toeBoxDepthMm === undefined
		? undefined
		: rounded(
				model.toeBoxDepthMm +
					linerOutMm(model, needs) -
					needs.depthMm -
					(needs.insert?.forefootMm ?? 0),
				1,
			)

/** Nothing is answered where shelf or visit does not tell the depth. */
export function askDepth({ model }: Trial, { needs, value, basis }: Fitter): Answer {
	const marginMm = depthMarginIn(model, needs)
	if (marginMm === undefined || model.toeBoxDepthMm === undefined) return {}
	const linerMm = linerOutMm(model, needs)
	const because = [
		mm('toeBoxDepthMm', model.toeBoxDepthMm),
		...needs.because.depth,
		...(linerMm > 0 ? [mm('linerOutMm', linerMm)] : []),
	]
	if (-marginMm > value('footwear.depthStopMm'))
		return {
			stops: [
				reason(
					'too-shallow',
					state('match.too-shallow', { shortMm: rounded(-marginMm, 1) }),
					because,
					basis('too shallow', 'footwear.depthStopMm'),
				),
			],
		}
	const shortMm = value('footwear.depthLeastMm') - marginMm
	if (shortMm > 0)
		return {
			against: [
				penalty(
					'shallow',
					state('match.shallow', { shortMm: rounded(shortMm, 1) }),
					shortMm * value('footwear.pointsDepth'),
					because,
					basis('depth margin', 'footwear.depthLeastMm'),
				),
			],
			changes:
				model.removableLiner && model.linerThicknessMm && linerMm === 0
					? [change(state('match.change-liner', { linerMm: model.linerThicknessMm }))]
					: [],
		}
	return {
		for: [
			reason(
				'depth',
				state('match.depth', { marginMm }),
				because,
				basis('depth margin', 'footwear.depthLeastMm'),
			),
		],
	}
}
