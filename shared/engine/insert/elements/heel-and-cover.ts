/** Relief and height under the heel, and the cover of a painful high arch. */
import type { ElementRow } from './row.ts'

export const heelAndCoverRows: readonly ElementRow[] = [
	{
		element: 'heel-aperture',
		calls: [[{ conditions: ['plantar-heel-pain'] }]],
		key: 'insert.heelApertureMm',
		unit: 'mm deep',
		range: ['insert.heelApertureMinMm', 'insert.heelApertureMaxMm'],
		where: 'both',
		needsShell: true,
		against: [],
		cautions: [{ code: 'insert.caution-heel-bone-stress' }],
	},
	{
		element: 'heel-cushion',
		calls: [
			[{ conditions: ['calcaneal-apophysitis'], eitherSide: true }],
			[{ conditions: ['heel-fat-pad-pain'] }],
		],
		key: 'insert.heelCushionMm',
		unit: 'mm',
		range: ['insert.heelCushionMinMm', 'insert.heelCushionMaxMm'],
		where: 'both',
		needsShell: false,
		against: [],
		cautions: [{ code: 'insert.caution-count-with-raise' }],
	},
	{
		element: 'heel-raise',
		calls: [
			[{ ankleRaise: true }],
			[
				{
					conditions: ['achilles-midportion', 'achilles-insertional', 'haglund-deformity'],
					eitherSide: true,
				},
			],
		],
		key: 'insert.achillesRaiseMm',
		unit: 'mm',
		range: ['insert.achillesRaiseMinMm', 'insert.achillesRaiseMaxMm'],
		where: 'both',
		needsShell: false,
		against: [
			{
				rule: 'back-of-ankle',
				conditions: ['posterior-ankle-impingement'],
				leavesOut: true,
			},
			{ rule: 'forefoot-load', conditions: ['sesamoid-pain', 'metatarsalgia'] },
			{ rule: 'front-of-knee', conditions: ['patellofemoral-pain', 'patellar-tendinopathy'] },
		],
		cautions: [{ code: 'insert.caution-same-raise' }],
	},
	{
		element: 'cover',
		code: 'insert.cover-full-contact',
		calls: [[{ conditions: ['cavus-foot-pain'] }]],
		key: 'insert.coverCavusMm',
		unit: 'mm',
		range: ['insert.coverCavusMinMm', 'insert.coverCavusMaxMm'],
		where: 'trainer',
		needsShell: true,
		against: [],
		cautions: [
			{ code: 'insert.caution-cover-in-boots', figures: { mostMm: 'insert.coverBootMm' } },
		],
	},
]
