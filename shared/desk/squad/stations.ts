/** The stations of a screening day: what each one enters, and what it is not done without. */
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
const pair = (group: string, key: string): readonly string[] => [
	`${group}.left.${key}`,
	`${group}.right.${key}`,
]
const feet = ['heelToToeMm', 'heelToBallMm', 'ballWidthMm'].map((key) => pair('feet', key))
const lunge = pair('ankles', 'lungeCm')
const fpi = pair('posture', 'fpi6')
export const stations: readonly Station[] = [
	{
		id: 'check-in',
		name: 'Check-in',
		rows: [['play.code'], ['play.position'], ['play.kickingFoot']],
		needs: ['play.code'],
	},
	{
		id: 'measures',
		name: 'Measures',
		rows: [['body.statureCm'], ['body.massKg'], ...feet],
		needs: ['body.statureCm', 'body.massKg', ...(feet[0] ?? []), ...(feet[2] ?? [])],
	},
	{ id: 'footwear', name: 'Footwear', rows: [], needs: ['footwear'] },
	{
		id: 'ankles-and-posture',
		name: 'Ankles and posture',
		rows: [
			lunge,
			pair('ankles', 'kneeStraightDeg'),
			fpi,
			pair('posture', 'navicularDropMm'),
			pair('posture', 'firstRay'),
			pair('posture', 'heelRises'),
		],
		needs: [...lunge, ...fpi],
	},
	{ id: 'clinician', name: 'Clinician', rows: [], needs: [] },
]
export const stationOf = (id: StationId): Station =>
	stations.find((station) => station.id === id) as Station
const at = (visit: Visit, path: string): unknown =>
	path
		.split('.')
		.reduce<unknown>((here, key) => (here as Record<string, unknown> | undefined)?.[key], visit)
/** Paths of a station that are neither measured nor marked as not measured. */
export function missingAt(visit: Visit, id: StationId): string[] {
	return stationOf(id).needs.filter((path) => {
		const value = at(visit, path)
		return (
			(value === undefined || value === null || (Array.isArray(value) && value.length === 0)) &&
			!(path in (visit.notMeasured ?? {}))
		)
	})
}
