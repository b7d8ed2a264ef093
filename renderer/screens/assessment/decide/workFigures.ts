/**
 * Small drawings of the changes to a boot: the place marked on a boot from the side, or on a sole
 * from above. Not to scale.
 */
interface Drawn {
	figure: { svg: string; alternative: string }
	caption: string
}
const ink = '#1d2726'
const mark = '#0f6b5c'
const boot =
	'<path d="M 22 84 L 20 44 Q 26 32 42 36 L 84 40 Q 118 56 158 60 Q 208 62 222 82 L ' +
	'222 84 Z M 20 84 L 224 84 Q 226 96 212 96 L 24 98 Q 18 92 20 84 Z" fill="none" ' +
	`stroke="${ink}" stroke-width="1.5"/>`
const sole =
	'<path d="M 20 60 C 20 38 34 34 60 36 C 96 40 112 28 150 22 C 196 18 226 40 222 58 ' +
	'C 220 84 188 100 152 94 C 118 88 96 80 60 84 C 34 86 20 82 20 60 Z" fill="none" ' +
	`stroke="${ink}" stroke-width="1.5"/>`
const filled = (d: string) =>
	`<path d="${d}" fill="${mark}" fill-opacity="0.55" stroke="${mark}" stroke-width="1"/>`
const arrow = (x1: number, y1: number, x2: number, y2: number) =>
	`<path d="M ${x1} ${y1} L ${x2} ${y2}" stroke="${mark}" stroke-width="2.4"/><circle ` +
	`cx="${x2}" cy="${y2}" r="3.4" fill="${mark}"/>`
const stud = (x: number, y: number, hit: boolean) =>
	`<circle cx="${x}" cy="${y}" r="6" fill="${hit ? '#b3261e' : '#5b6766'}" fill-opacity="0.8"/>`
const studPlaces = [
	{ x: 146, y: 36 },
	{ x: 146, y: 82 },
	{ x: 180, y: 38 },
	{ x: 178, y: 80 },
	{ x: 44, y: 48 },
	{ x: 44, y: 72 },
]
/** @param hit place of the stud that is marked, in the order of the places */
const studsMarked = (hit: number) =>
	studPlaces.map(({ x, y }, place) => stud(x, y, place === hit)).join('')
/** On the drawn sole the inner edge is above. */
const drawings: Record<string, { body: string; says: string }> = {
	'heel-raise': {
		body: boot + filled('M 24 84 L 24 74 L 100 83 L 100 84 Z'),
		says:
			'A wedge under the liner at the heel, thickest at the back, running out before the ' +
			'midfoot',
	},
	'stud-first': {
		body: sole + studsMarked(0),
		says: 'A sole with the stud under the inner side of the ball marked',
	},
	'stud-fifth': {
		body: sole + studsMarked(1),
		says: 'A sole with the stud under the outer side of the ball marked',
	},
	'stretch-ball': {
		body: sole + arrow(150, 58, 150, 16) + arrow(150, 58, 150, 102),
		says: 'The upper drawn outwards on both sides of the ball',
	},
	'spot-stretch': {
		body:
			`${sole}${arrow(150, 50, 150, 14)}<circle cx="150" cy="26" r="12" fill="${mark}" ` +
			'fill-opacity="0.4"/>',
		says: 'The upper drawn outwards in one spot over the joint at the edge of the ball',
	},
	'collar-pad': {
		body: boot + filled('M 32 42 Q 28 56 30 68 L 38 68 Q 36 54 42 42 Z'),
		says: 'A pad inside the collar, beside the tendon and not over it',
	},
	'tongue-pad': {
		body: boot + filled('M 84 42 Q 116 57 150 61 L 150 67 Q 112 64 82 49 Z'),
		says: 'A pad under the tongue, over the instep',
	},
	'liner-swap': {
		body: boot + filled('M 24 79 L 218 79 L 220 84 L 24 84 Z'),
		says: 'The liner, from heel to toe, taken out and another put in',
	},
	'forefoot-plate': {
		body: boot + filled('M 70 81 L 218 81 L 220 84 L 70 84 Z'),
		says: 'A thin stiff plate under the liner, from the midfoot to the toe',
	},
}
/** The drawing of a change, or undefined where it has none. */
export function workFigure(id: string): Drawn | undefined {
	const drawing = Object.hasOwn(drawings, id) ? drawings[id] : undefined
	if (!drawing) return undefined
	const { body, says } = drawing
	const svg =
		'<svg xmlns="http://www.w3.org/2000/svg" width="246" height="120" viewBox="0 0 246 ' +
		`120">${body}</svg>`
	return { figure: { svg, alternative: says }, caption: says }
}
