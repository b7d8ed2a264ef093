/** The stations of a screening day: what each one enters, and what it is not done without. */
import { pathsOf, placedIn, type Section, sections } from '../../engine/visit/measures/catalogue.ts'
import type { Measure } from '../../engine/visit/measures/measure.ts'
import { recordedAt } from '../../engine/visit/measures/value.ts'
import type { Visit } from '../../engine/visit/visit.ts'

export const stationIds = [
	'check-in',
	'measures',
	'footwear',
	'ankles-and-posture',
	'clinician',
] as const
export type StationId = (typeof stationIds)[number]
export interface Station {
	id: StationId
	name: string
	/** Rows of fields: one path, or left and right. */
	rows: readonly (readonly string[])[]
	/** Paths without which the station is not done. */
	needs: readonly string[]
}
/** What a station enters of some sections, in order: what a day needs or offers. */
function entered(...stands: Section[]): Pick<Station, 'rows' | 'needs'> {
	const placed = stands.flatMap(placedIn)
	const rowsOf = (...days: Measure['squadDay'][]) =>
		placed.filter(({ measure }) => days.includes(measure.squadDay)).map(pathsOf)
	return { rows: rowsOf('needed', 'offered'), needs: rowsOf('needed').flat() }
}
export const stations: readonly Station[] = [
	{
		id: 'check-in',
		name: 'Check-in',
		rows: [['play.code'], ['play.position'], ['play.kickingFoot']],
		needs: ['play.code'],
	},
	{ id: 'measures', name: 'Measures', ...entered(sections.size, sections.feet) },
	{ id: 'footwear', name: 'Footwear', rows: [], needs: ['footwear'] },
	{
		id: 'ankles-and-posture',
		name: 'Ankles and posture',
		...entered(sections.ankles, sections.posture),
	},
	{ id: 'clinician', name: 'Clinician', rows: [], needs: [] },
]
export const stationOf = (id: StationId): Station =>
	stations.find((station) => station.id === id) as Station
/** Paths of a station that are neither measured nor marked as not measured. */
export function missingAt(visit: Visit, id: StationId): string[] {
	return stationOf(id).needs.filter((path) => {
		const value = recordedAt(visit, path)
		return (
			(value === undefined || value === null || (Array.isArray(value) && value.length === 0)) &&
			!(path in (visit.notMeasured ?? {}))
		)
	})
}
