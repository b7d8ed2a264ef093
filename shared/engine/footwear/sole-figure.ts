/**
 * A model's sole with its studs and the player's joints, at true proportion: one unit of the
 * drawing is one millimetre.
 */
import type { SizingResult } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Model, ShelfSize } from '../visit/shelf.ts'
import { rounded } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import { type JointRisks, jointNames, jointsOf, studDistances, studPoints } from './studs.ts'

const margin = 14
const escaped = (text: string) =>
	text
		.replaceAll('&', '&amp;')
		.replaceAll('<', '&lt;')
		.replaceAll('>', '&gt;')
		.replaceAll('"', '&quot;')
const noRisks: JointRisks = {
	'first metatarsal head': [],
	'fifth metatarsal head': [],
	'heel centre': [],
}
const shortName = {
	'first metatarsal head': 'MT1',
	'fifth metatarsal head': 'MT5',
	'heel centre': 'heel',
} as const

/** What a screen shows and a report prints, with the words for who does not see it. */
export interface Figure {
	svg: string
	widthPt: number
	heightPt: number
	alternative: string
}
/**
 * The sole seen from above, studs showing through; the outline is drawn from inside length and ball
 * width, the shape of the last is not known.
 * @param size the size to draw (the match's); @param ptPerMm scale on paper, 2.8346 is true size
 * @returns joints are left out where length, heel to ball or width is not measured, and the
 * alternative says so
 */
export function soleFigure(
	model: Model,
	size: ShelfSize,
	sizing: SizingResult,
	side: Side,
	protocol: Protocol,
	risks: JointRisks = noRisks,
	colour = '#0f6b5c',
	ptPerMm = 1,
): Figure {
	const length = size.insideLengthMm,
		half = size.ballWidthMm / 2
	const width = size.ballWidthMm + 2 * margin,
		height = length + 2 * margin + 12
	// y grows to the outer edge; a left sole seen from above has its outer edge on the left
	const outward = side === 'left' ? -1 : 1
	const px = (yMm: number) => rounded(width / 2 + outward * yMm, 2)
	const py = (xMm: number) => rounded(margin + length - xMm, 2)
	const at = (x: number, y: number) => `${px(y * half)} ${py(x * length)}`
	const outline =
		`M ${at(0, 0)} C ${at(0, 0.5)} ${at(0.08, 0.66)} ${at(0.18, 0.66)} C ` +
		`${at(0.38, 0.66)} ${at(0.48, 0.98)} ${at(0.64, 1)} C ${at(0.82, 1)} ` +
		`${at(0.97, 0.6)} ${at(1, -0.15)} C ${at(1, -0.62)} ${at(0.9, -0.95)} ` +
		`${at(0.73, -1)} C ${at(0.58, -0.98)} ${at(0.5, -0.56)} ${at(0.36, -0.6)} C ` +
		`${at(0.26, -0.64)} ${at(0.24, -0.66)} ${at(0.18, -0.66)} C ` +
		`${at(0.08, -0.66)} ${at(0, -0.5)} ${at(0, 0)} Z`
	const text = (x: number, y: number, words: string, fontSize = 6) =>
		`<text x="${rounded(x, 2)}" y="${rounded(y, 2)}" font-family="Noto" font-size="${fontSize}" ` +
		`text-anchor="middle" fill="#1d2726">${escaped(words)}</text>`
	const parts = [
		`<path d="${outline}" fill="${colour}" fill-opacity="0.1" stroke="${colour}" stroke-width="1"/>`,
	]
	const joints = jointsOf(sizing, side, protocol)
	const underMm = protocol.value('footwear.underJointMm')
	const distances = joints
		? studDistances(model, size, joints, risks, underMm, protocol.value('footwear.studLeastMm'))
		: []
	const alarmed = new Set(
		distances.flatMap((distance) => (distance.atRisk.length > 0 ? distance.under : [])),
	)
	studPoints(model, size).forEach((point, index) => {
		const { shape } = model.studs![index]!
		const fill = alarmed.has(index) ? '#b3261e' : '#5b6766'
		const [rx, ry] = shape === 'round' ? [4.5, 4.5] : shape === 'oval' ? [3.5, 6] : [2.2, 7.5]
		parts.push(
			`<ellipse cx="${px(point.yMm)}" cy="${py(point.xMm)}" rx="${rx}" ry="${ry}" ` +
				`fill="${fill}" fill-opacity="0.75"/>`,
		)
	})
	if (joints)
		for (const name of jointNames) {
			const { xMm, yMm } = joints[name]
			const risk = risks[name].length > 0
			parts.push(
				`<circle cx="${px(yMm)}" cy="${py(xMm)}" r="${underMm}" fill="none" ` +
					`stroke="${risk ? '#b3261e' : '#1d2726'}" ` +
					`stroke-width="${risk ? 1.4 : 0.7}"${risk ? '' : ' stroke-dasharray="2 2"'}/>`,
			)
			parts.push(
				`<path d="M ${px(yMm) - 2} ${py(xMm)} h 4 M ${px(yMm)} ${py(xMm) - 2} v 4" ` +
					'stroke="#1d2726" stroke-width="0.8"/>',
				text(px(yMm), py(xMm) - underMm - 1.5, shortName[name]),
			)
		}
	parts.push(text(width / 2, height - 4, `${side === 'left' ? 'Left' : 'Right'}, from above`, 7))
	const told = distances.map(
		(distance) =>
			`${distance.joint}: nearest stud ${distance.nearestMm} ` +
			`mm${distance.under.length > 0 ? `, ${distance.under.length === 1 ? 'one stud' : `${distance.under.length} studs`} within ${underMm} mm` : ''}${distance.atRisk.length > 0 ? ', a joint at risk' : ''}`,
	)
	const studs =
		model.studs === undefined
			? 'studs not recorded'
			: model.studs.length === 0
				? 'no studs'
				: model.studs.length === 1
					? 'one stud'
					: `${model.studs.length} studs`
	const alternative =
		`${side === 'left' ? 'Left' : 'Right'} sole of ${model.name} seen from ` +
		`above, inside length ${length} mm, ` +
		`${studs}${joints ? (told.length > 0 ? `. ${told.join('; ')}` : '') : '. Joints not placed: measure length, heel to ball and ball width'}.`
	return {
		svg:
			'<svg xmlns="http://www.w3.org/2000/svg" role="img" ' +
			`aria-label="${escaped(alternative)}" width="${rounded(width * ptPerMm, 2)}" ` +
			`height="${rounded(height * ptPerMm, 2)}" viewBox="0 0 ${rounded(width, 2)} ` +
			`${rounded(height, 2)}">${parts.join('')}</svg>`,
		widthPt: rounded(width * ptPerMm, 2),
		heightPt: rounded(height * ptPerMm, 2),
		alternative,
	}
}
