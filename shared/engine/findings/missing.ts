/** What a complete visit would still add, in the order of the walk. */

import { isMinor } from '../facts/age.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides, perSide } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'

interface Want {
	path: string
	says: string
	minorsOnly?: true
}
const sided: Want[] = [
	{ path: 'feet.*.heelToToeMm', says: 'heel to toe' },
	{ path: 'feet.*.heelToBallMm', says: 'heel to ball' },
	{ path: 'feet.*.ballWidthMm', says: 'ball width' },
	{ path: 'feet.*.ballGirthMm', says: 'ball girth' },
	{ path: 'ankles.*.lungeCm', says: 'knee to wall' },
	{ path: 'ankles.*.lungeDeg', says: 'lunge angle' },
	{ path: 'ankles.*.endFeel', says: 'end feel' },
	{ path: 'posture.*.fpi6', says: 'foot posture index' },
	{ path: 'posture.*.firstRay', says: 'first ray' },
	{ path: 'posture.*.firstMtpDegNonWeightBearing', says: 'first MTP range' },
]
const single: Want[] = [
	{ path: 'play.code', says: 'code played' },
	{ path: 'play.surfaces', says: 'surfaces played on' },
	{ path: 'body.massKg', says: 'body mass' },
	{ path: 'body.statureCm', says: 'stature', minorsOnly: true },
	{ path: 'body.sittingHeightCm', says: 'sitting height', minorsOnly: true },
	{ path: 'body.motherStatureCm', says: "mother's stature", minorsOnly: true },
	{ path: 'body.fatherStatureCm', says: "father's stature", minorsOnly: true },
	{ path: 'screening', says: 'the warning-sign questions' },
	{ path: 'footwear', says: 'the pairs the player owns' },
]
function isRecorded(visit: Visit, path: string): boolean {
	let value: unknown = visit
	for (const key of path.split('.'))
		value =
			value === null || typeof value !== 'object'
				? undefined
				: (value as Record<string, unknown>)[key]
	if (value !== null && typeof value === 'object') return Object.keys(value).length > 0
	return value !== undefined
}
/** Paths not yet measured, without those the clinician marked as not measured. */
export function missingMeasures(
	visit: Visit,
	protocol: Protocol,
): { path: string; says: string }[] {
	const minor = isMinor(visit, protocol)
	const pairs = sided.flatMap((want) => {
		const here = perSide((side) => want.path.replace('*', side))
		return bothSides.map((side) => ({ path: here[side], says: `${want.says}, ${side}` }))
	})
	return [...pairs, ...single.filter((want) => minor || !want.minorsOnly)]
		.filter(({ path }) => !isRecorded(visit, path) && !(path in (visit.notMeasured ?? {})))
		.map(({ path, says }) => ({ path, says }))
}
