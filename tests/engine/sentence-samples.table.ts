/** What a sentence of a room is filled in with where no visit at hand fills it in, by the name of the parameter; a number is 4 where it has no row. */
const pair = { letter: 'A', name: 'match boots' }
const worn = [
	{ pair, minutes: 20 },
	{ pair: { letter: 'B', name: 'turf shoes' }, minutes: 55 },
]
export const samples: Readonly<Record<string, unknown>> = {
	...pair,
	by: '2027-05-02',
	better: 'turf',
	feature: 'long-studs',
	inPlaceOf: 'soft-ground',
	over: 'short-studs',
	overWay: 'seek',
	surfaces: ['natural-soft'],
	way: 'seek',
	code: 'association',
	date: '2027-05-02',
	buyBy: '2027-05-02',
	earliest: '2027-04-02',
	ground: 'wet',
	joints: { left: ['first-joint'], right: ['first-joint'] },
	places: { left: ['heel'], right: ['heel'] },
	kind: 'match',
	measureBy: '2027-05-02',
	moved: [
		{ field: 'start', before: '18:00', after: '18:30' },
		{ field: 'surface', before: 'natural-firm', after: 'hall' },
	],
	of: 'foot',
	on: '2027-05-02',
	pair: 'match boots',
	part: 'ankle',
	parts: [
		{ pair: 'match boots', minutes: 20 },
		{ pair: 'turf shoes', minutes: 55 },
	],
	points: [
		{ ageYears: 12.5, value: 152, percentile: 50 },
		{ ageYears: 13, value: 155, percentile: 50 },
	],
	readings: [
		{ date: '2026-07-15', value: 241 },
		{ date: '2027-01-20', value: 246.5 },
	],
	seenWeeks: [6, 8],
	side: 'left',
	sole: 'firm-ground',
	start: '18:00',
	status: 'cancelled',
	surface: 'natural-firm',
	unit: 'mm',
	until: '2027-05-02',
	values: [{ percentile: 50, value: 152 }],
	widths: [1.5, 2.4],
	worn,
}
/** Parameters that differ between the sentences of one name: what the row above does not fit. */
export const samplesOf: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
	'gate.hold': { sign: 'ottawa-met', what: ['sport', 'match', 'impact', 'weight'], until: 'imaging-result', since: '2027-05-02' },
	'gate.not-established': { questions: ['fever'] },
	'priority.modify': { pairs: ['match boots', 'trainers'] },
	'priority.replace': { pairs: ['match boots', 'trainers'] },
	// said in records of before 0.4
	'ankle.heel-raise': { mm: { left: 4, right: 6 }, shorter: 'right' },
	'season.change-moved': { worn: { before: worn, after: [worn[0]] } },
	'season.change-pair-date': { before: '2027-05-02', after: '2027-06-02' },
}
/** Parameters that are yes or no: each is tried both ways. */
export const yesOrNo: ReadonlySet<string> = new Set(['begun', 'minor', 'reached', 'seated', 'withinLimit', 'withSock'])
