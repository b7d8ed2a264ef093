/**
 * A model's sole with its studs and the player's joints, at true proportion: one unit of the
 * drawing is one millimetre.
 */
import { jointNames } from '../facts/joint-risks.table.ts'
import type { JointRisks } from '../facts/joint-risks.ts'
import type { SizingResult, StudDistance } from '../findings/assessment.ts'
import { need } from '../plain/need.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { JointName, Model, ShelfSize, Stud } from '../visit/shelf.ts'
import { rounded } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import { jointsOf, type Point, studDistances, studPoints } from './studs.ts'

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
/** The sheet a sole is drawn on: one unit is one millimetre, the toe is at the top. */
interface Drawing {
	widthMm: number
	heightMm: number
	/** From the middle line, outwards, and from the heel: to the place on the sheet. */
	acrossAt(yMm: number): number
	alongAt(xMm: number): number
	/** Where the sole itself ends. */
	lengthMm: number
	halfWidthMm: number
}
function drawingOf(size: ShelfSize, side: Side): Drawing {
	const lengthMm = size.insideLengthMm
	const widthMm = size.ballWidthMm + 2 * margin
	// y grows to the outer edge; a left sole seen from above has its outer edge on the left
	const outward = side === 'left' ? -1 : 1
	return {
		widthMm,
		heightMm: lengthMm + 2 * margin + 12,
		acrossAt: (yMm) => rounded(widthMm / 2 + outward * yMm, 2),
		alongAt: (xMm) => rounded(margin + lengthMm - xMm, 2),
		lengthMm,
		halfWidthMm: size.ballWidthMm / 2,
	}
}
/** The outline of any sole; the shape of the last is not known. */
function outlineOn({ acrossAt, alongAt, lengthMm, halfWidthMm }: Drawing): string {
	const at = (along: number, across: number) =>
		`${acrossAt(across * halfWidthMm)} ${alongAt(along * lengthMm)}`
	return (
		`M ${at(0, 0)} C ${at(0, 0.5)} ${at(0.08, 0.66)} ${at(0.18, 0.66)} C ` +
		`${at(0.38, 0.66)} ${at(0.48, 0.98)} ${at(0.64, 1)} C ${at(0.82, 1)} ` +
		`${at(0.97, 0.6)} ${at(1, -0.15)} C ${at(1, -0.62)} ${at(0.9, -0.95)} ` +
		`${at(0.73, -1)} C ${at(0.58, -0.98)} ${at(0.5, -0.56)} ${at(0.36, -0.6)} C ` +
		`${at(0.26, -0.64)} ${at(0.24, -0.66)} ${at(0.18, -0.66)} C ` +
		`${at(0.08, -0.66)} ${at(0, -0.5)} ${at(0, 0)} Z`
	)
}
const text = (x: number, y: number, words: string, fontSize = 6) =>
	`<text x="${rounded(x, 2)}" y="${rounded(y, 2)}" font-family="Noto" font-size="${fontSize}" ` +
	`text-anchor="middle" fill="#1d2726">${escaped(words)}</text>`
const studRadii: Record<Stud['shape'], readonly [across: number, along: number]> = {
	round: [4.5, 4.5],
	oval: [3.5, 6],
	blade: [2.2, 7.5],
}
/** @param alarming whether it stands under a joint at risk */
function studOn(
	{ acrossAt, alongAt }: Drawing,
	{ xMm, yMm }: Point,
	shape: Stud['shape'],
	alarming: boolean,
): string {
	const [across, along] = studRadii[shape]
	return (
		`<ellipse cx="${acrossAt(yMm)}" cy="${alongAt(xMm)}" rx="${across}" ry="${along}" ` +
		`fill="${alarming ? '#b3261e' : '#5b6766'}" fill-opacity="0.75"/>`
	)
}
/** The circle within which a stud counts as under the joint, its centre and its name. */
function jointOn(
	{ acrossAt, alongAt }: Drawing,
	name: JointName,
	{ xMm, yMm }: Point,
	underMm: number,
	atRisk: boolean,
): string[] {
	const [x, y] = [acrossAt(yMm), alongAt(xMm)]
	return [
		`<circle cx="${x}" cy="${y}" r="${underMm}" fill="none" ` +
			`stroke="${atRisk ? '#b3261e' : '#1d2726'}" ` +
			`stroke-width="${atRisk ? 1.4 : 0.7}"${atRisk ? '' : ' stroke-dasharray="2 2"'}/>`,
		`<path d="M ${x - 2} ${y} h 4 M ${x} ${y - 2} v 4" stroke="#1d2726" stroke-width="0.8"/>`,
		text(x, y - underMm - 1.5, shortName[name]),
	]
}
const counted = (count: number) => (count === 1 ? 'one stud' : `${count} studs`)
function studsInWords({ studs }: Model): string {
	if (studs === undefined) return 'studs not recorded'
	return studs.length === 0 ? 'no studs' : counted(studs.length)
}
function distanceInWords({ joint, nearestMm, under, atRisk }: StudDistance, underMm: number) {
	const close = under.length > 0 ? `, ${counted(under.length)} within ${underMm} mm` : ''
	return (
		`${joint}: nearest stud ${nearestMm} mm${close}` +
		(atRisk.length > 0 ? ', a joint at risk' : '')
	)
}
/** What the drawing says of the joints; '' for a sole without studs. */
function jointsInWords(
	placed: boolean,
	distances: readonly StudDistance[],
	underMm: number,
): string {
	if (!placed) return '. Joints not placed: measure length, heel to ball and ball width'
	if (distances.length === 0) return ''
	return `. ${distances.map((distance) => distanceInWords(distance, underMm)).join('; ')}`
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
	const drawing = drawingOf(size, side)
	const { widthMm, heightMm, lengthMm } = drawing
	const sideWord = side === 'left' ? 'Left' : 'Right'
	const joints = jointsOf(sizing, side, protocol)
	const underMm = protocol.value('footwear.underJointMm')
	const leastHeightMm = protocol.value('footwear.studLeastMm')
	const distances = joints ? studDistances(model, size, joints, risks, underMm, leastHeightMm) : []
	const alarming = new Set(
		distances.flatMap((distance) => (distance.atRisk.length > 0 ? distance.under : [])),
	)
	const points = studPoints(model, size)
	const drawn = [
		`<path d="${outlineOn(drawing)}" fill="${colour}" fill-opacity="0.1" stroke="${colour}" ` +
			'stroke-width="1"/>',
		...[...(model.studs ?? []).entries()].map(([index, { shape }]) =>
			studOn(drawing, need(points[index], 'the place of a stud'), shape, alarming.has(index)),
		),
		...(joints
			? jointNames.flatMap((name) =>
					jointOn(drawing, name, joints[name], underMm, risks[name].length > 0),
				)
			: []),
		text(widthMm / 2, heightMm - 4, `${sideWord}, from above`, 7),
	]
	const alternative =
		`${sideWord} sole of ${model.name} seen from above, inside length ${lengthMm} mm, ` +
		`${studsInWords(model)}${jointsInWords(joints !== undefined, distances, underMm)}.`
	const widthPt = rounded(widthMm * ptPerMm, 2)
	const heightPt = rounded(heightMm * ptPerMm, 2)
	return {
		svg:
			'<svg xmlns="http://www.w3.org/2000/svg" role="img" ' +
			`aria-label="${escaped(alternative)}" width="${widthPt}" height="${heightPt}" ` +
			`viewBox="0 0 ${rounded(widthMm, 2)} ${rounded(heightMm, 2)}">${drawn.join('')}</svg>`,
		widthPt,
		heightPt,
		alternative,
	}
}
