/** Is it wide enough at the ball, and not loose? */
import type { Because } from '../../protocol/basis.ts'
import type { ShelfSize } from '../../visit/shelf.ts'
import { rounded } from '../../visit/sides.ts'
import { state } from '../../words/statement.ts'
import { type Answer, change, mm, otherChoice, penalty, reason } from './answer.ts'
import type { Fitter, Trial } from './fitter.ts'
import type { Needs } from './needs.ts'

/** Inside ball width less the wider foot, mm to 0.1; undefined where no width is measured. */
export const widthMarginIn = (size: ShelfSize, { widthMm }: Needs): number | undefined =>
	widthMm === undefined ? undefined : rounded(size.ballWidthMm - widthMm, 1)

/** A foot in a model of too little width. */
interface Narrow {
	marginMm: number
	/** What a soft upper gives. */
	givesMm: number
	because: Because[]
}
/** Nothing is answered where no width is measured; a firm upper stops sooner than a giving one. */
export function askWidth({ model, size }: Trial, fitter: Fitter): Answer {
	const { needs, limits, value, basis } = fitter
	const { widthMm } = needs
	const marginMm = widthMarginIn(size, needs)
	if (widthMm === undefined || marginMm === undefined) return {}
	const firm = model.upperSoftness === 'firm'
	const soft = model.upperSoftness === 'soft'
	const because = [mm('insideBallWidthMm', size.ballWidthMm), ...needs.because.width]
	const givesMm = soft ? value('footwear.softUpperGivesMm') : 0
	const stopKey = firm ? 'footwear.widthStopFirmMm' : 'footwear.widthStopMm'
	if (-marginMm - givesMm > value(stopKey))
		return {
			stops: [
				reason(
					'too-narrow',
					state('match.too-narrow', { shortMm: rounded(-marginMm, 1), upperGives: soft }),
					because,
					basis(`too narrow, ${firm ? 'firm' : 'giving'} upper`, stopKey),
				),
			],
			changes: [otherChoice(state('match.change-width', { insideMm: rounded(widthMm, 1) }))],
		}
	if (marginMm < limits.tightMm) return tight({ marginMm, givesMm, because }, firm, fitter)
	if (marginMm > limits.looseMm)
		return {
			against: [
				penalty(
					'loose',
					state('match.loose', { marginMm }),
					(marginMm - limits.looseMm) * value('footwear.pointsLoose'),
					because,
					basis('width margin', 'footwear.widthLooseMm'),
				),
			],
		}
	return {
		for: [
			reason(
				'width',
				state('match.width', { marginMm }),
				because,
				basis('width margin', 'footwear.widthLooseMm'),
			),
		],
	}
}
/** Tight, not too narrow: a soft upper gives, others may be stretched. */
function tight(
	{ marginMm, givesMm, because }: Narrow,
	firm: boolean,
	{ limits, value, basis }: Fitter,
): Answer {
	const tightMm = Math.max(0, limits.tightMm - marginMm - givesMm)
	if (tightMm === 0)
		return {
			for: [
				reason(
					'tight-gives',
					state('match.tight-gives', { narrowMm: rounded(-marginMm, 1) }),
					because,
					basis('soft upper', 'footwear.softUpperGivesMm'),
				),
			],
		}
	const mostMm = value('footwear.stretchMaxMm')
	return {
		against: [
			penalty(
				'tight',
				state('match.tight', { narrowMm: rounded(limits.tightMm - marginMm, 1) }),
				tightMm * value('footwear.pointsWidth'),
				because,
				basis('width margin', 'footwear.widthTightMm'),
			),
		],
		changes: [
			tightMm <= mostMm && !firm
				? change(
						state('match.change-by-stretching', {
							stretchMm: rounded(tightMm, 1),
							limitMm: mostMm,
						}),
					)
				: otherChoice(state('match.change-fitting', { widerMm: rounded(tightMm, 1) })),
		],
	}
}
