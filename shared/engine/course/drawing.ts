/**
 * The course as SVG: a plot for each complaint, one under another on the same days, with the sessions
 * missed below it. Markers, dashes and letters tell apart what colour would.
 */
import { readingNumbers } from '../charts/drawing/reading-numbers.ts'
import {
	type Box,
	hair,
	ink,
	line,
	lineHeight,
	marker,
	type Place,
	path,
	quiet,
	short,
	text,
	widthOf,
} from '../charts/drawing/shapes.ts'
import { monthTicks } from '../charts/scale.ts'
import { dayNumber } from '../plain/days.ts'
import type { CourseComplaint, Course as Whole } from './course.ts'

type Course = Pick<Whole, 'visits' | 'complaints'>

interface CourseLook {
	colour: string
	widthPt: number
}
/** Points. */
const left = 42
const rightMargin = 12
const plotHeight = 78
const between = 12
const mostPain = 10
const painTicks = [0, 5, 10] as const
/** Room for the letters over a plot, and for the sessions missed below it. */
const markRoom = 13
const missedRoom = 17

/** Words in as many lines as the width asks for. */
function wrapped(words: string, widthPt: number): string[] {
	const lines: string[] = []
	for (const word of words.split(' ')) {
		const last = lines.at(-1)
		const longer = last === undefined ? word : `${last} ${word}`
		if (last === undefined || widthOf(longer, true) > widthPt) lines.push(word)
		else lines[lines.length - 1] = longer
	}
	return lines
}
/** From the day of a visit to a place; a visit alone stands in the middle. */
function placer(course: Course, widthPt: number): (date: string) => number {
	const days = course.visits.map(({ date }) => dayNumber(date))
	const [first, last] = [Math.min(...days), Math.max(...days)]
	const inner = { from: left + 10, to: widthPt - rightMargin - 10 }
	return (date) =>
		last === first
			? (inner.from + inner.to) / 2
			: inner.from + ((dayNumber(date) - first) / (last - first)) * (inner.to - inner.from)
}
interface Plot {
	course: Course
	complaint: CourseComplaint
	box: Box
	atX: (date: string) => number
	colour: string
}
const atY = ({ y, height }: Box, value: number): number => y + height - (value / mostPain) * height
/** Joined only where the visit next to it has it too: a gap stays a gap. */
function lineOf(of: 'now' | 'worst', { course, complaint, box, atX }: Plot) {
	const places = course.visits.map(({ date }, at) => {
		const value = complaint.readings[at]?.[of]
		return value === undefined
			? undefined
			: { value, x: dayNumber(date), place: [atX(date), atY(box, value)] as Place }
	})
	const pieces = places.slice(1).flatMap((to, at) => {
		const from = places[at]
		return from && to ? [[from.place, to.place]] : []
	})
	return { pieces, readings: places.flatMap((one) => one ?? []) }
}
function pain(plot: Plot): string[] {
	const { colour, box } = plot
	const worst = lineOf('worst', plot)
	const now = lineOf('now', plot)
	const placed = [...now.readings, ...worst.readings].map(({ value, x, place }) => ({
		point: { x, y: value },
		place,
	}))
	return [
		...worst.pieces.map((piece) => path(piece, { colour: ink, width: 1.2, dash: '4 3' })),
		...now.pieces.map((piece) => path(piece, { colour, width: 1.8 })),
		...readingNumbers(placed, { ...box, y: box.y - 8, height: box.height + 8 }, []),
		...worst.readings.map(({ place }) => marker('square', place, colour)),
		...now.readings.map(({ place }) => marker('circle', place, colour)),
	]
}
const grid = ({ box }: Plot): string[] =>
	painTicks.flatMap((value) => {
		const y = atY(box, value)
		return [
			line([box.x, y], [box.x + box.width, y], { colour: hair, width: 0.6 }),
			text([box.x - 4, y + 3], String(value), { anchor: 'end', colour: quiet }),
		]
	})
/** A line at each visit at which something was changed, with its letter over it. */
const marks = ({ course, box, atX }: Plot): string[] =>
	course.visits.flatMap(({ date, mark }) => {
		if (mark === undefined) return []
		const x = atX(date)
		return [
			line([x, box.y - 3], [x, box.y + box.height], { colour: quiet, width: 0.8, dash: '1.5 2' }),
			text([x, box.y - 5], mark, { anchor: 'middle', bold: true }),
		]
	})
function missed({ course, complaint, box, atX }: Plot): string[] {
	const y = box.y + box.height + 14
	const told = course.visits.flatMap(({ date }, at) => {
		const value = complaint.readings[at]?.missed
		return value === undefined ? [] : [text([atX(date), y], String(value), { anchor: 'middle' })]
	})
	return told.length === 0
		? []
		: [text([box.x - 4, y], 'missed', { anchor: 'end', colour: quiet }), ...told]
}
function days(course: Course, box: Box, widthPt: number, top: number): string[] {
	const numbers = course.visits.map(({ date }) => dayNumber(date))
	const [first, last] = [Math.min(...numbers), Math.max(...numbers)]
	const inner = { from: box.x + 10, width: box.width - 20 }
	const room = Math.max(1, Math.floor(inner.width / 60))
	return monthTicks(first, last, room).map(({ at, label }) => {
		const x = inner.from + ((at - first) / Math.max(1, last - first)) * inner.width
		const half = widthOf(label) / 2
		const middle = Math.min(Math.max(x, half), widthPt - half)
		return text([middle, top], label, { anchor: 'middle', colour: quiet })
	})
}
/** What the markers, the letters and the row below stand for. */
function key({ colour, widthPt }: CourseLook): { drawn: string[]; bottom: number } {
	const entries = [
		{ name: 'pain now', sign: (at: Place) => marker('circle', at, colour) },
		{ name: 'worst pain', sign: (at: Place) => marker('square', at, colour) },
		{
			name: 'changed then',
			sign: ([x, y]: Place) => text([x, y + 3], 'A', { anchor: 'middle', bold: true }),
		},
	]
	const drawn: string[] = [text([0, 9], 'Pain (0 to 10)', { bold: true })]
	let x = widthOf('Pain (0 to 10)', true) + 14
	let y = 9
	for (const { name, sign } of entries) {
		const room = 12 + widthOf(name)
		if (x + room > widthPt) [x, y] = [0, y + lineHeight + 2]
		drawn.push(sign([x + 4, y - 3]), text([x + 12, y], name))
		x += room + 12
	}
	return { drawn, bottom: y + 8 }
}
/** @param course with at least one visit and one complaint */
export function courseSvg(course: Course, look: CourseLook): string {
	const { colour, widthPt } = look
	const legend = key(look)
	const atX = placer(course, widthPt)
	const drawn = [...legend.drawn]
	let y = legend.bottom
	let box: Box = { x: left, y, width: widthPt - left - rightMargin, height: plotHeight }
	for (const complaint of course.complaints) {
		const title = wrapped(complaint.name, widthPt)
		drawn.push(
			...title.map((words, at) => text([0, y + 9 + at * lineHeight], words, { bold: true })),
		)
		box = { ...box, y: y + title.length * lineHeight + markRoom }
		const plot: Plot = { course, complaint, box, atX, colour }
		drawn.push(...grid(plot), ...marks(plot), ...pain(plot), ...missed(plot))
		y = box.y + plotHeight + missedRoom + between
	}
	drawn.push(...days(course, box, widthPt, y))
	const heightPt = y + 6
	return (
		`<svg xmlns="http://www.w3.org/2000/svg" width="${short(widthPt)}" height="${short(heightPt)}" ` +
		`viewBox="0 0 ${short(widthPt)} ${short(heightPt)}">${drawn.join('')}</svg>`
	)
}
