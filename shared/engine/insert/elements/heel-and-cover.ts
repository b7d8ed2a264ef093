/** Relief under the heel, and the cover of a painful high arch. */
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
