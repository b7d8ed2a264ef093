/** Size and shape: the band of inside lengths, the width, the labels that begin the search. */
import type { SizingResult } from '../../../../shared/engine/findings/assessment.ts'
import { termWords } from '../../../../shared/engine/visit/terms.ts'
import { Facts } from './Facts.tsx'
import { spanWords } from './proposalWords.ts'
import type { AskedProps } from './stepTypes.ts'

const labelled = ['eu', 'uk', 'jpCm', 'usMen', 'usWomen', 'usChild', 'au'] as const
function labels({ sizes }: SizingResult): string {
	if (!sizes) return ''
	return labelled
		.flatMap((system) => {
			const size = sizes[system]
			return size ? [`${termWords(system)} ${size.label}`] : []
		})
		.join(', ')
}
export function SizeProposal({ assessment: { sizing } }: AskedProps) {
	const { insideLengthMm, toeRoomMm, left, right, longerFoot } = sizing
	const widths = [left?.widthMm, right?.widthMm]
	return (
		<Facts
			facts={[
				['Inside length', insideLengthMm && spanWords(insideLengthMm)],
				['Toe room', toeRoomMm && `${toeRoomMm.min} to ${toeRoomMm.max} mm`],
				['Longer foot', longerFoot],
				[
					'Width at the ball',
					widths.some((width) => width !== undefined) &&
						widths
							.map((width) => width ?? 'not measured')
							.join(' / ')
							.concat(' mm'),
				],
				['Labels to begin with', labels(sizing)],
			]}
		/>
	)
}
