/** Which column of a list holds what, by the names that lists give them. */

/** Headers by which lists name their columns, lower case. */
const headers = {
	date: ['date', 'day', 'match date', 'game date', 'start date', 'datum'],
	time: ['time', 'start', 'start time', 'kick off', 'kick-off', 'kickoff'],
	end: ['end', 'end time', 'finish'],
	minutes: ['minutes', 'duration', 'length', 'min', 'minutes planned'],
	hours: ['hours', 'h'],
	kind: ['kind', 'type', 'event type'],
	surface: ['surface', 'pitch'],
	ground: ['ground', 'condition', 'wetness', 'weather'],
	team: ['team', 'squad'],
	title: ['title', 'subject', 'summary', 'name', 'opponent', 'opposition', 'event', 'description'],
	place: ['place', 'venue', 'location'],
	id: ['id', 'uid', 'game id', 'match id', 'fixture id'],
	status: ['status'],
} as const
export type Column = keyof typeof headers

/** The place of each column that a first row names. */
export function columnsOf(firstRow: readonly string[]): ReadonlyMap<Column, number> {
	const names = firstRow.map((name) => name.trim().toLowerCase())
	return new Map(
		(Object.keys(headers) as Column[]).flatMap((column) => {
			const place = headers[column]
				.map((header) => names.indexOf(header))
				.find((index) => index >= 0)
			return place === undefined ? [] : [[column, place] as const]
		}),
	)
}
