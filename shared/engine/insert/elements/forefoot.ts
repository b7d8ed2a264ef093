/** What stands under, or is cut out under, the forefoot and the first ray. */
import { type ElementRow, flatPain, forefootPain } from './row.ts'

export const forefootRows: readonly ElementRow[] = [
	{
		element: 'forefoot-post-lateral',
		calls: [
			[
				{
					readings: [
						{ measure: 'forefoot', is: ['valgus-flexible'] },
						{ measure: 'firstRay', is: ['plantarflexed'] },
					],
				},
				{ conditions: forefootPain },
			],
		],
		key: 'insert.forefootLateralDeg',
		unit: 'deg',
		range: ['insert.forefootLateralMinDeg', 'insert.forefootLateralMaxDeg'],
		where: 'both',
		needsShell: true,
		against: [
			{
				rule: 'fifth-metatarsal',
				conditions: ['fifth-metatarsal-stress-fracture'],
				past: true,
				leavesOut: true,
			},
			{ rule: 'bunionette', conditions: ['bunionette'] },
		],
		cautions: [{ code: 'insert.caution-rigid-midfoot' }],
	},
	{
		element: 'forefoot-post-medial',
		calls: [
			[{ readings: [{ measure: 'forefoot', is: ['varus-flexible'] }] }, { conditions: flatPain }],
		],
		key: 'insert.forefootMedialDeg',
		unit: 'deg',
		range: ['insert.forefootMedialMinDeg', 'insert.forefootMedialMaxDeg'],
		where: 'both',
		needsShell: true,
		against: [
			{
				rule: 'first-joint-jammed',
				conditions: ['hallux-limitus', 'first-mtp-osteoarthritis', 'turf-toe'],
				leavesOut: true,
			},
			{
				rule: 'first-joint-limited',
				readings: [{ measure: 'firstMtp', is: ['functional-limit', 'structural-limit'] }],
				leavesOut: true,
			},
		],
		cautions: [{ code: 'insert.caution-jams-first-ray' }],
	},
	{
		element: 'first-ray-cutout',
		calls: [
			[
				{ readings: [{ measure: 'firstMtp', is: ['functional-limit'] }] },
				{ conditions: ['hallux-limitus', 'plantar-heel-pain', 'metatarsalgia'] },
			],
			[
				{ readings: [{ measure: 'firstRay', is: ['plantarflexed'] }] },
				{ conditions: ['sesamoid-pain', 'metatarsalgia', 'cavus-foot-pain'] },
			],
		],
		key: 'insert.firstRayCutoutMm',
		unit: 'mm',
		range: ['insert.firstRayCutoutMinMm', 'insert.firstRayCutoutMaxMm'],
		where: 'both',
		needsShell: true,
		against: [
			{
				rule: 'first-joint-held',
				conditions: ['first-mtp-osteoarthritis', 'turf-toe'],
				leavesOut: true,
			},
			{
				rule: 'forefoot-varus',
				readings: [{ measure: 'forefoot', is: ['varus-flexible', 'varus-rigid'] }],
				leavesOut: true,
			},
		],
		cautions: [{ code: 'insert.caution-weak-proof' }],
	},
	{
		element: 'forefoot-stiffener',
		calls: [
			[{ conditions: ['first-mtp-osteoarthritis', 'turf-toe'] }],
			[
				{ readings: [{ measure: 'firstMtp', is: ['structural-limit'] }] },
				{ conditions: ['hallux-limitus'] },
			],
		],
		key: 'insert.stiffenerMm',
		unit: 'mm carbon',
		range: ['insert.stiffenerMinMm', 'insert.stiffenerMaxMm'],
		where: 'both',
		needsShell: false,
		against: [
			{
				rule: 'calf-lever',
				conditions: ['calf-strain', 'achilles-midportion', 'achilles-insertional'],
			},
		],
		cautions: [{ code: 'insert.caution-push-off' }],
	},
	{
		element: 'metatarsal-dome',
		calls: [[{ conditions: ['metatarsalgia'] }]],
		key: 'insert.domeMm',
		unit: 'mm high',
		range: ['insert.domeMinMm', 'insert.domeMaxMm'],
		where: 'both',
		needsShell: false,
		against: [{ rule: 'neuroma', conditions: ['interdigital-neuroma'] }],
		cautions: [{ code: 'insert.caution-dome-room' }],
	},
	{
		element: 'forefoot-cushion',
		calls: [
			[
				{
					conditions: [
						'metatarsalgia',
						'interdigital-neuroma',
						'second-metatarsal-stress-fracture',
					],
				},
			],
		],
		key: 'insert.forefootCushionMm',
		unit: 'mm',
		range: ['insert.forefootCushionMinMm', 'insert.forefootCushionMaxMm'],
		where: 'both',
		needsShell: false,
		against: [],
		cautions: [{ code: 'insert.caution-room-over-toes' }],
	},
	{
		element: 'first-head-aperture',
		calls: [[{ conditions: ['sesamoid-pain'] }]],
		key: 'insert.firstHeadApertureMm',
		unit: 'mm deep',
		range: ['insert.firstHeadApertureMinMm', 'insert.firstHeadApertureMaxMm'],
		where: 'both',
		needsShell: false,
		against: [],
		cautions: [{ code: 'insert.caution-no-plug', figures: { weeks: 'insert.focalBonePainWeeks' } }],
	},
]
