/** How the length to fit, the size labels and the inside lengths were worked out. */
import { isAdult } from '../facts/age.ts'
import { type ShoeKind, soreNails, toeRoomBand } from '../facts/toe-room.ts'
import type { SizingResult } from '../findings/assessment.ts'
import type { Working } from '../findings/finding.ts'
import { equation, exactly, quantity, times } from '../findings/formula.ts'
import { figure, linesOf } from '../findings/working.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { labelHalfWidth } from './confidence.ts'
import { footLengthBasis } from './foot-workings.ts'
import { type InsideLength, insideFor } from './inside-length.ts'
import { mmPerInchSize, otherEuLine, sizeWorking, systemNames } from './sizes.ts'

type Result = Omit<SizingResult, 'workings'>

/** Whole per cent: the error it rests on bears no more; never nought or a hundred. */
function percent(probability: number): string {
	if (probability > 0.99) return 'over 99 %'
	if (probability < 0.01) return 'under 1 %'
	return `${figure(100 * probability, 0)} %`
}
/** Whether the length to fit is a heel-to-toe length; else it comes from heel to ball. */
const fitsByToe = ({ decidedBy }: Result): boolean => decidedBy === 'toe-length'

function fitLengthWorking(result: Result, fitLengthMm: number, protocol: Protocol): Working {
	const feet = bothSides.flatMap((side) => {
		const { lengthMm, archLengthMm } = result[side]
		if (lengthMm === undefined) return []
		const fromBall =
			archLengthMm === undefined ? '' : `; from heel to ball ${figure(archLengthMm)} mm`
		return [`Foot length, ${side}: ${figure(lengthMm)} mm${fromBall}`]
	})
	const byToe = fitsByToe(result)
	const how = byToe
		? 'heel to toe'
		: 'from heel to ball, which asks for about half a size more or above: in proportion within ' +
			`${protocol.value('sizing.ballBandMm')} mm either side of ` +
			`${protocol.value('sizing.halfSizeMm')} mm, wholly beyond`
	const foot = result.decidedByFoot === 'equal' ? 'both feet' : `the ${result.decidedByFoot} foot`
	return {
		id: 'sizing.fit-length',
		title: 'Length to fit',
		lines: [...feet, `The most that a foot asks for: ${figure(fitLengthMm)} mm, ${foot}, ${how}`],
		basis: byToe ? footLengthBasis : protocol.basis('heel-to-ball length', 'sizing.halfSizeMm'),
	}
}
type Sizes = NonNullable<SizingResult['sizes']>

function mondopointWorking({ mondopoint }: Sizes, fitLengthMm: number): Working {
	const { lengthMm, widthMm } = mondopoint
	const width = widthMm === undefined ? '' : `; ball width of the wider foot ${widthMm}`
	return {
		id: 'sizing.mondopoint',
		title: 'Mondopoint',
		lines: [`F to the nearest 5 mm: ${figure(fitLengthMm)} gives ${lengthMm}${width}`],
		basis: {
			rule: 'Mondopoint',
			source: 'ISO 9407:2019 as summarised; steps of 5 mm',
			strength: 'standard',
		},
	}
}
const labelWorkings = (sizes: Sizes, fitLengthMm: number): Working[] =>
	systemNames.map((system) => {
		const { title, line, basis } = sizeWorking(system, fitLengthMm, sizes[system])
		const { label, fitting, scale } = sizes[system]
		const labelOnScale = scale === 'adult' ? `${label}` : `${label} ${scale}`
		return {
			id: `sizing.size-${system.toLowerCase()}`,
			title,
			lines: linesOf(
				line,
				`Label, nearest half: ${labelOnScale}; fitting, next half up: ${fitting}`,
				system === 'eu' ? otherEuLine(fitLengthMm) : undefined,
			),
			basis,
		}
	})

/** What a label stands for either way, mm. */
const halfLabel = times(quantity(mmPerInchSize), exactly(labelHalfWidth))
const spanWords = { min: 'Least', target: 'Aim', max: 'Most' } as const
function insideWorking(
	kind: ShoeKind,
	{ toeRoomMm }: InsideLength,
	visit: Visit,
	fitLengthMm: number,
	protocol: Protocol,
): Working {
	const adult = isAdult(visit, protocol)
	const nailsAreSore = soreNails(visit).length > 0
	const sock = figure(visit.feet?.sockMm ?? 0)
	const sum = (at: keyof typeof spanWords) =>
		`${spanWords[at]}: ` +
		equation(insideFor(fitLengthMm, visit.feet?.sockMm ?? 0, toeRoomMm[at]), 'mm inside', 1)
	return {
		id: `sizing.inside-${kind}`,
		title: `${kind === 'boots' ? 'Boots' : 'Trainers'}: toe room and inside length`,
		lines: [
			`Toe room ${toeRoomMm.min} to ${toeRoomMm.max} mm, ${adult ? 'adult' : 'growing foot'}` +
				`${nailsAreSore ? ', sore nails' : ''}; ` +
				`sock ${sock} mm`,
			sum('min'),
			sum('target'),
			sum('max'),
		],
		basis: protocol.basis(
			`toe room, ${kind}`,
			toeRoomBand(kind, { adult, nailsAreSore }, protocol).keys.min,
		),
	}
}
function confidenceWorking(
	{ uk }: Sizes,
	confidence: number,
	next: NonNullable<SizingResult['nextSize']>,
	byToe: boolean,
	protocol: Protocol,
): Working {
	const named = (label: number, scale: string) => `UK ${label}${scale === 'child' ? ' child' : ''}`
	const grows = byToe ? '' : ' and grows when divided by the heel-to-ball ratio'
	return {
		id: 'sizing.confidence',
		title: 'How sure the size is',
		lines: [
			`One reading has a standard error of ${protocol.value('sizing.readingSemMm')} mm; it ` +
				`falls with the square root of the readings${grows}`,
			`UK ${figure(uk.exact, 3)} lies ${figure(Math.abs(uk.exact - uk.label), 3)} from ` +
				`label ${uk.label}, which stands for a quarter size either way: ${equation(halfLabel, 'mm')}`,
			`Probability of ${named(uk.label, uk.scale)}: ${percent(confidence)}; next, ` +
				`${named(next.label, next.scale)}: ${percent(next.probability)}`,
			'Measuring error only: the spread between makers comes on top',
		],
		basis: protocol.basis('error of one reading', 'sizing.readingSemMm'),
	}
}
/** The workings of the size; none without a length to fit. */
export function sizeWorkings(visit: Visit, result: Result, protocol: Protocol): Working[] {
	const { fitLengthMm, sizes, toeRoomMm, insideLengthMm, trainers } = result
	const { sizeConfidence, nextSize } = result
	if (fitLengthMm === undefined || !sizes || !toeRoomMm || !insideLengthMm || !trainers) return []
	if (sizeConfidence === undefined || !nextSize) return []
	const boots = { toeRoomMm, insideLengthMm }
	return [
		fitLengthWorking(result, fitLengthMm, protocol),
		mondopointWorking(sizes, fitLengthMm),
		...labelWorkings(sizes, fitLengthMm),
		insideWorking('boots', boots, visit, fitLengthMm, protocol),
		insideWorking('trainers', trainers, visit, fitLengthMm, protocol),
		confidenceWorking(sizes, sizeConfidence, nextSize, fitsByToe(result), protocol),
	]
}
