/** Posts and skives under the heel: they tilt the rearfoot. */
import { type Against, type ElementRow, flatPain, outerPain, pronated, supinated } from './row.ts'

const skiveCup = {
	code: 'insert.caution-skive-cup',
	figures: { cupMm: 'insert.skiveCupMm', bootMm: 'insert.bootCupMm' },
} as const
/** A joined hindfoot cannot tilt, however long ago it was found. Common practice, no source. */
const joinedBones: Against = {
	rule: 'joined-bones',
	conditions: ['tarsal-coalition'],
	leavesOut: true,
	past: true,
}
export const rearfootRows: readonly ElementRow[] = [
	{
		element: 'rearfoot-post-medial',
		calls: [
			[{ readings: [pronated], conditions: ['flexible-flatfoot-pain'] }, { conditions: flatPain }],
		],
		key: 'insert.rearfootMedialDeg',
		unit: 'deg',
		range: ['insert.rearfootMedialMinDeg', 'insert.rearfootMedialMaxDeg'],
		where: 'both',
		needsShell: true,
		against: [
			{ rule: 'ankle-tips-outwards', conditions: ['lateral-ankle-instability'], past: true },
			{ rule: 'knee-inward-load', conditions: ['knee-osteoarthritis'], leavesOut: true },
			joinedBones,
		],
		cautions: [{ code: 'insert.caution-rigid-foot' }],
	},
	{
		element: 'medial-skive',
		calls: [
			[
				{ readings: [{ measure: 'supinationResistance', is: ['high'] }] },
				{ readings: [pronated] },
				{ conditions: flatPain },
			],
		],
		key: 'insert.medialSkiveMm',
		unit: 'mm',
		range: ['insert.medialSkiveMinMm', 'insert.medialSkiveMaxMm'],
		where: 'trainer',
		needsShell: true,
		against: [
			{
				rule: 'heel-pressure',
				conditions: ['heel-fat-pad-pain', 'plantar-heel-pain'],
				leavesOut: true,
			},
			{ rule: 'knee-inward-load', conditions: ['knee-osteoarthritis'], leavesOut: true },
			joinedBones,
		],
		cautions: [skiveCup],
	},
	{
		element: 'rearfoot-post-lateral',
		calls: [
			[{ readings: [supinated], conditions: ['cavus-foot-pain'] }, { conditions: outerPain }],
		],
		key: 'insert.rearfootLateralDeg',
		unit: 'deg',
		range: ['insert.rearfootLateralMinDeg', 'insert.rearfootLateralMaxDeg'],
		where: 'both',
		needsShell: true,
		against: [
			{
				rule: 'inner-side-load',
				conditions: ['flexible-flatfoot-pain', 'sinus-tarsi-pain', 'posterior-tibial-tendinopathy'],
				leavesOut: true,
			},
			{
				rule: 'fifth-metatarsal-disputed',
				conditions: ['fifth-metatarsal-stress-fracture'],
				past: true,
			},
		],
		cautions: [{ code: 'insert.caution-fifth-metatarsal' }],
	},
	{
		element: 'lateral-skive',
		calls: [[{ readings: [supinated] }, { conditions: ['peroneal-tendinopathy'] }]],
		key: 'insert.lateralSkiveMm',
		unit: 'mm',
		range: ['insert.lateralSkiveMinMm', 'insert.lateralSkiveMaxMm'],
		where: 'trainer',
		needsShell: true,
		against: [
			{
				rule: 'inner-side-or-heel-load',
				conditions: [
					'flexible-flatfoot-pain',
					'sinus-tarsi-pain',
					'heel-fat-pad-pain',
					'plantar-heel-pain',
				],
				leavesOut: true,
			},
		],
		cautions: [skiveCup],
	},
]
