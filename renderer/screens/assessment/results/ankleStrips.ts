/** The tests of the ankles as scales: what was read, left and right, against what judges it. Pure. */
import { distanceCutOff } from '../../../../shared/engine/ankle/stature.ts'
import type { AnkleResult, AnkleSide } from '../../../../shared/engine/findings/assessment.ts'
import type { Protocol, ThresholdKey } from '../../../../shared/engine/protocol/protocol.ts'
import { ankleMeasures } from '../../../../shared/engine/visit/measures/ankles.table.ts'
import { bothSides } from '../../../../shared/engine/visit/sides.ts'
import type { Visit } from '../../../../shared/engine/visit/visit.ts'
import { number } from '../../../../shared/engine/words/en/format.ts'
import { unitShown } from '../../../parts/units.ts'
import { endsOf, type Strip, type StripLane, type StripZone } from './strip.ts'

type Ankles = Pick<AnkleResult, 'left' | 'right'>
type Read = 'lungeCm' | 'lungeDeg'
const errorKeys: Readonly<Record<Read, ThresholdKey>> = {
	lungeCm: 'ankle.repeatCm',
	lungeDeg: 'ankle.repeatDeg',
}
const bandWords: Readonly<Record<AnkleSide['band'], string>> = {
	restricted: ', below',
	adequate: '',
	unknown: '',
}
/** Whether this test was the one that the band of a side came from. */
const decided = ({ bandBy }: AnkleSide, test: Read): boolean =>
	bandBy !== undefined && (test === 'lungeDeg') === (bandBy === 'angle')

function lanesOf(ankles: Ankles, test: Read): StripLane[] {
	return bothSides.map((side) => {
		const ankle = ankles[side]
		const value = ankle[test]
		if (value === undefined) return { name: side, says: 'not read', marks: [] }
		const verdict = decided(ankle, test) ? bandWords[ankle.band] : ''
		return {
			name: side,
			says: `${number(value)}${verdict}`,
			marks: [{ value, filled: ankle.recordedOnly !== true }],
		}
	})
}
/** The cut-off of a test; a minor's distance has one only with a stature. */
const cutOffOf = (test: Read, visit: Visit, protocol: Protocol): number | undefined =>
	test === 'lungeDeg'
		? protocol.value('ankle.restrictedDeg')
		: distanceCutOff(visit, protocol)?.value
function zonesOf(cutOff: number | undefined, low: number, high: number): StripZone[] {
	if (cutOff === undefined) return []
	return [
		{ from: low, to: cutOff, name: 'restricted', lit: false },
		{ from: cutOff, to: high, name: 'not restricted', lit: true },
	]
}
/** What stands behind the title: whether the band rests on it. */
function asideOf(ankles: Ankles, test: Read): string {
	const sides = bothSides.filter((side) => decided(ankles[side], test))
	if (sides.length === 2) return 'decides'
	return sides.length === 1 ? `decides, ${sides[0]}` : ''
}
function noteOf(cutOff: number | undefined, errorIs: number, scaled: boolean): string {
	if (cutOff === undefined) return "No cut-off: a minor's distance needs a stature."
	const by = scaled ? ', scaled to stature' : ''
	return `cut-off ${number(cutOff)}${by}; error of one reading ${number(errorIs)}`
}
function lungeStrip(
	test: Read,
	ankles: Ankles,
	visit: Visit,
	protocol: Protocol,
): Strip | undefined {
	const values = bothSides.flatMap((side) => ankles[side][test] ?? [])
	if (values.length === 0) return undefined
	const { label, soft, unit } = ankleMeasures[test]
	const cutOff = cutOffOf(test, visit, protocol)
	const error = protocol.value(errorKeys[test])
	const ends = endsOf(soft, values)
	const scaled = test === 'lungeCm' && cutOff !== protocol.value('ankle.restrictedCm')
	return {
		key: test,
		title: `${label}, ${unitShown(unit)}`,
		aside: asideOf(ankles, test),
		...ends,
		zones: zonesOf(cutOff, ends.low, ends.high),
		limits: cutOff === undefined ? [] : [{ value: cutOff, error }],
		lanes: lanesOf(ankles, test),
		note: noteOf(cutOff, error, scaled),
	}
}
/** Knee straight to knee bent: the gap between them tells the long calf muscle from the rest. */
function gapLane(side: 'left' | 'right', ankle: AnkleSide): StripLane {
	const { kneeStraightDeg: straight, kneeBentDeg: bent, recordedOnly } = ankle
	const filled = recordedOnly !== true
	const marks = [
		...(straight === undefined ? [] : [{ value: straight, filled: false }]),
		...(bent === undefined ? [] : [{ value: bent, filled }]),
	]
	const says =
		straight !== undefined && bent !== undefined
			? `gap ${number(bent - straight)}`
			: marks.map(({ value }) => number(value)).join('')
	return { name: side, says: says || 'not read', marks }
}
function gapStrip(ankles: Ankles, protocol: Protocol): Strip | undefined {
	const lanes = bothSides.map((side) => gapLane(side, ankles[side]))
	const values = lanes.flatMap(({ marks }) => marks.map(({ value }) => value))
	if (values.length === 0) return undefined
	const straight = protocol.value('ankle.gastrocnemiusStraightDeg')
	const gap = protocol.value('ankle.gastrocnemiusGapDeg')
	const error = protocol.value('ankle.gapErrorDeg')
	return {
		key: 'gap',
		title: `Off the ground, knee straight to bent, ${unitShown('deg')}`,
		aside: '',
		...endsOf([ankleMeasures.kneeStraightDeg.soft[0], ankleMeasures.kneeBentDeg.soft[1]], values),
		zones: [],
		limits: [{ value: straight }],
		lanes,
		note:
			`tight long calf muscle: straight (ring) at ${number(straight)} or less and a gap of ` +
			`${number(gap)} or more; error of the gap ${number(error)}`,
	}
}
/** One scale for each test that was taken, in the order of the fields. */
export const ankleStrips = (ankles: Ankles, visit: Visit, protocol: Protocol): Strip[] =>
	[
		lungeStrip('lungeCm', ankles, visit, protocol),
		lungeStrip('lungeDeg', ankles, visit, protocol),
		gapStrip(ankles, protocol),
	].filter((strip) => strip !== undefined)
