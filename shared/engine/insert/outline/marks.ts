/** How each element is drawn on its foot; places are proportions of the player's own measures. */
import { rounded } from '../../visit/sides.ts'
import { domeEdgeMm, postHeightMm, steepestPostDeg } from '../dose.ts'
import { type PlacedFoot, type Point, path, shown } from './shape.ts'

/** A drawn element, and its label with the place on the foot where that stands, mm. */
interface Drawn {
	shape: string
	label: string
	across: number
	along: number
}
interface Mark {
	element: string
	/** @param value the element's amount in its unit; undefined where none is given */
	draw(foot: PlacedFoot, value: number | undefined): Drawn
}
const wedge = 'fill="#b9c6c4" fill-opacity="0.6" stroke="#1d2726" stroke-width="0.25"'
const cut = 'fill="#ffffff" stroke="#1d2726" stroke-width="0.4" stroke-dasharray="1.6 1"'
const pad = 'fill="#8aa6a1" fill-opacity="0.6" stroke="#1d2726" stroke-width="0.25"'
const ring = 'fill="none" stroke="#1d2726" stroke-width="0.3" stroke-dasharray="0.8 0.8"'

function ellipse(centre: Point, radiusAcross: number, radiusAlong: number, style: string): string {
	return (
		`<ellipse cx="${shown(centre.x)}" cy="${shown(centre.y)}" rx="${shown(radiusAcross)}" ` +
		`ry="${shown(radiusAlong)}" ${style}/>`
	)
}
function area([first, ...rest]: readonly [Point, ...Point[]], style: string): string {
	return `<path d="${path(['M', first, ...rest.flatMap((point) => ['L', point]), 'Z'])}" ${style}/>`
}
const amount = (value: number | undefined) => shown(value ?? 0)

/**
 * A raise under the heel, from its very back to so many mm along the foot. @param share of the width
 * of the heel
 */
function heelBlock({ at, border }: PlacedFoot, share: number, to: number): string {
	const steps = Array.from({ length: 24 }, (_, step) => 1 + ((to - 1) * step) / 23)
	const half = (edge: 'inner' | 'outer', along: number) => share * border(edge, along)
	const inner = steps.map((along) => at(half('inner', along), along))
	const outer = steps.toReversed().map((along) => at(-half('outer', along), along))
	return area([at(0, 1), ...inner, ...outer], ring)
}
/** An angle that is no post any more has no height. */
function postLabel(heelWidthMm: number, angleDeg: number): string {
	if (angleDeg >= steepestPostDeg) return `${amount(angleDeg)} deg`
	const heightMm = rounded(postHeightMm(heelWidthMm, angleDeg), 1)
	return `${amount(angleDeg)} deg, ${shown(heightMm)} mm`
}
const rearfootPost =
	(edge: 'inner' | 'outer'): Mark['draw'] =>
	({ within, ballLengthMm, heelWidthMm }, value) => {
		const halfHeel = (heelWidthMm / 2) * (edge === 'inner' ? 1 : -1)
		return {
			shape: area(
				[
					within(0, ballLengthMm * 0.04),
					within(halfHeel * 0.92, ballLengthMm * 0.12),
					within(halfHeel, ballLengthMm * 0.34),
					within(0, ballLengthMm * 0.34),
				],
				wedge,
			),
			label: postLabel(heelWidthMm, value ?? 0),
			across: 0,
			along: ballLengthMm * 0.37,
		}
	}
const skive =
	(edge: 'inner' | 'outer'): Mark['draw'] =>
	({ at, ballLengthMm, heelWidthMm }, value) => ({
		shape: ellipse(
			at((edge === 'inner' ? 1 : -1) * heelWidthMm * 0.24, ballLengthMm * 0.14),
			heelWidthMm * 0.2,
			ballLengthMm * 0.09,
			wedge,
		),
		label: `skive ${amount(value)} mm`,
		across: 0,
		along: ballLengthMm * 0.27,
	})

const heelMarks: readonly Mark[] = [
	{
		element: 'heel-raise',
		draw: (foot, value) => ({
			shape: heelBlock(foot, 0.94, foot.ballLengthMm * 0.4),
			label: `raise ${amount(value)} mm`,
			across: 0,
			along: foot.ballLengthMm * 0.42,
		}),
	},
	{
		element: 'leg-length-raise',
		draw: (foot, value) => ({
			shape: heelBlock(foot, 0.86, foot.ballLengthMm * 0.5),
			label: value === undefined ? 'refer first' : `leg raise ${amount(value)} mm`,
			across: 0,
			along: foot.ballLengthMm * 0.52,
		}),
	},
	{ element: 'rearfoot-post-medial', draw: rearfootPost('inner') },
	{ element: 'rearfoot-post-lateral', draw: rearfootPost('outer') },
	{ element: 'medial-skive', draw: skive('inner') },
	{ element: 'lateral-skive', draw: skive('outer') },
	{
		element: 'heel-cushion',
		draw: ({ at, ballLengthMm, heelWidthMm }, value) => ({
			shape: ellipse(at(0, ballLengthMm * 0.16), heelWidthMm * 0.36, ballLengthMm * 0.13, pad),
			label: `cushion ${amount(value)} mm`,
			across: 0,
			along: ballLengthMm * 0.31,
		}),
	},
	{
		element: 'heel-aperture',
		draw: ({ at, ballLengthMm, heelWidthMm }, value) => ({
			shape: ellipse(at(0, ballLengthMm * 0.16), heelWidthMm * 0.24, ballLengthMm * 0.09, cut),
			label: `${amount(value)} mm deep`,
			across: 0,
			along: ballLengthMm * 0.16,
		}),
	},
]
const forefootMarks: readonly Mark[] = [
	{
		element: 'metatarsal-dome',
		draw: ({ at, ballLengthMm, widthMm, behindHeadsMm }) => {
			const edge = domeEdgeMm(ballLengthMm, behindHeadsMm)
			const reach = ballLengthMm * 0.11
			return {
				shape: ellipse(at(0, edge - reach), widthMm * 0.16, reach, pad),
				label: `dome, edge ${shown(edge)} mm`,
				across: 0,
				along: edge - 2.3 * reach,
			}
		},
	},
	{
		element: 'first-ray-cutout',
		draw: ({ within, ballLengthMm, widthMm, behindHeadsMm }, value) => {
			const back = ballLengthMm * 0.78
			const end = ballLengthMm - behindHeadsMm
			return {
				shape: area(
					[
						within(widthMm * 0.5, end),
						within(widthMm * 0.2, end),
						within(widthMm * 0.2, back),
						within(widthMm * 0.5, back),
					],
					cut,
				),
				label: `cut-out ${amount(value)} mm`,
				across: widthMm * 0.18,
				along: back - 4,
			}
		},
	},
	{
		element: 'first-head-aperture',
		draw: ({ at, ballLengthMm, widthMm }, value) => ({
			shape: ellipse(at(widthMm * 0.3, ballLengthMm), widthMm * 0.15, widthMm * 0.15, cut),
			label: `${amount(value)} mm`,
			across: widthMm * 0.3,
			along: ballLengthMm,
		}),
	},
	{
		element: 'forefoot-post-medial',
		draw: ({ within, ballLengthMm, fifthLengthMm, widthMm }, value) => ({
			shape: area(
				[
					within(widthMm * 0.5, ballLengthMm),
					within(widthMm * 0.12, (ballLengthMm + fifthLengthMm) / 2),
					within(widthMm * 0.12, ballLengthMm * 0.8),
					within(widthMm * 0.5, ballLengthMm * 0.82),
				],
				wedge,
			),
			label: `${amount(value)} deg`,
			across: widthMm * 0.26,
			along: ballLengthMm * 0.9,
		}),
	},
	{
		element: 'forefoot-post-lateral',
		draw: ({ within, ballLengthMm, fifthLengthMm, widthMm }, value) => ({
			shape: area(
				[
					within(-widthMm * 0.5, fifthLengthMm),
					within(widthMm * 0.1, (ballLengthMm + fifthLengthMm) / 2 + 2),
					within(widthMm * 0.1, ballLengthMm * 0.78),
					within(-widthMm * 0.5, fifthLengthMm * 0.82),
				],
				wedge,
			),
			label: `${amount(value)} deg`,
			across: -widthMm * 0.24,
			along: ballLengthMm * 0.84,
		}),
	},
	{
		element: 'forefoot-cushion',
		draw: ({ at, ballLengthMm, widthMm }, value) => ({
			shape: ellipse(at(0, ballLengthMm * 0.98), widthMm * 0.4, ballLengthMm * 0.08, pad),
			label: `cushion ${amount(value)} mm`,
			across: 0,
			along: ballLengthMm * 1.08,
		}),
	},
	{
		element: 'forefoot-stiffener',
		draw: ({ within, ballLengthMm, lengthMm, widthMm }, value) => ({
			shape: area(
				[
					within(widthMm * 0.3, lengthMm * 0.95),
					within(widthMm * 0.38, ballLengthMm),
					within(widthMm * 0.2, ballLengthMm * 0.4),
					within(-widthMm * 0.2, ballLengthMm * 0.4),
					within(-widthMm * 0.38, ballLengthMm * 0.94),
					within(-widthMm * 0.2, lengthMm * 0.9),
				],
				ring,
			),
			label: `stiff plate ${amount(value)} mm`,
			across: 0,
			along: ballLengthMm * 0.62,
		}),
	},
]
/** In the order in which they are drawn, one over the other; elements not listed are not drawn. */
export const marks: readonly Mark[] = [...heelMarks, ...forefootMarks]
