/** Bone stress injury, by site, tenderness and the kind of pain. */

import type { Finding } from '../../findings/finding.ts'
import { present } from '../../plain/present.ts'
import { commonPractice } from '../../protocol/basis.ts'
import type { Screening } from '../../visit/visit.ts'
import { state } from '../../words/statement.ts'
import { above, allOf, anyOf, type Tri } from '../answers.ts'
import { boneSiteRows } from '../bone-sites.table.ts'
import { type Screened, screeningFinding } from '../conclusions.ts'
import { siteRow } from '../site-row.ts'
import { type Ground, type SignRow, signOfSide, youngImaging } from './sign-row.ts'
import { cancerGuideline, fromMemory } from './sources.ts'

type BoneStress = NonNullable<Screening['boneStress']>
type Site = BoneStress['site']
const bySite: Ground = {
	source:
		'Am Fam Physician 2003;67:85; Ekstrand and van Dijk 2013, Br J Sports Med 47:754; sites ' +
		'partly from memory',
	strength: 'expert',
}
/** A bone that a finger cannot reach. */
const deep = (site: Site): Tri => (site === undefined ? undefined : siteRow(site)?.deep === true)
const highRisk = (site: Site): Tri => {
	const row = siteRow(site)
	return row ? row.risk === 'high' : undefined
}
/** A site not named is treated like a low-risk one, and the name is asked for. */
const lowRiskOrUnnamed = (site: Site): boolean => siteRow(site)?.risk !== 'high'

export const boneStressSigns: readonly SignRow[] = [
	signOfSide('boneStress', 'bone-stress-hip', {
		holds: ({ site, loadPain, focalTenderness, nightPain }) =>
			allOf(deep(site), anyOf(loadPain, focalTenderness, nightPain)),
		action: 'same-day',
		says: () => state('screening.bone-stress-hip'),
		ground: fromMemory,
	}),
	signOfSide('boneStress', 'bone-stress-high', {
		holds: ({ site, focalTenderness, hopPain, loadPain, nightPain }) =>
			allOf(highRisk(site), anyOf(focalTenderness, hopPain), anyOf(loadPain, hopPain, nightPain)),
		action: 'imaging',
		says: ({ site }) => state('screening.bone-stress-high', present({ site })),
		notMet: ({ site }) =>
			highRisk(site) ? state('screening.bone-stress-high-not-met') : undefined,
		ground: bySite,
	}),
	signOfSide('boneStress', 'bone-stress-low-imaging', {
		holds: ({ site, focalTenderness, loadPain, hopPain, nightPain, weeksOfPain }, { protocol }) =>
			allOf(
				lowRiskOrUnnamed(site),
				focalTenderness,
				anyOf(loadPain, hopPain),
				anyOf(nightPain, hopPain, above(weeksOfPain, protocol.value('screening.boneStressWeeks'))),
			),
		action: 'imaging',
		says: ({ site }, { protocol }) =>
			state('screening.bone-stress-low-imaging', {
				...present({ site }),
				weeks: protocol.value('screening.boneStressWeeks'),
			}),
		ground: { key: 'screening.boneStressWeeks' },
	}),
	signOfSide('boneStress', 'bone-stress-rest-pain', {
		holds: ({ nightPain }) => nightPain,
		action: 'imaging',
		says: ({ site }, context) =>
			state('screening.bone-stress-rest-pain', { ...present({ site }), ...youngImaging(context) }),
		ground: cancerGuideline,
	}),
	signOfSide('boneStress', 'bone-stress-low', {
		holds: ({ site, focalTenderness, hopPain, loadPain }) =>
			allOf(lowRiskOrUnnamed(site), anyOf(focalTenderness, hopPain), anyOf(loadPain, hopPain)),
		action: 'letter',
		says: ({ site }, { protocol }) =>
			state('screening.bone-stress-low', {
				...present({ site }),
				weeks: protocol.value('screening.boneStressReviewWeeks'),
			}),
		// a site of high risk has its own rule, which may still be open
		notMet: ({ site }) =>
			lowRiskOrUnnamed(site) ? state('screening.bone-stress-low-not-met') : undefined,
		ground: fromMemory,
	}),
]

/** What is said about the examination itself: a hop that should not be repeated, a bone unnamed. */
export function boneStressCautions({ answers: { boneStress } }: Screened): Finding[] {
	return boneStress ? [...hopTested(boneStress), ...unnamedBone(boneStress)] : []
}
function hopTested({ side, site, hopPain, nightPain }: BoneStress): Finding[] {
	const row = siteRow(site)
	const highRiskSite = row?.risk === 'high' ? row.site : undefined
	if (hopPain === undefined || (highRiskSite === undefined && nightPain !== true)) return []
	return [
		screeningFinding(state('screening.hop-tested', present({ site: highRiskSite })), {
			side,
			level: 'caution',
			basis: { rule: 'hop test', ...commonPractice },
		}),
	]
}
function unnamedBone({ side, site, focalTenderness, loadPain, hopPain }: BoneStress): Finding[] {
	const painful = focalTenderness || loadPain || hopPain
	if (site !== undefined || !painful) return []
	const highRiskSites = boneSiteRows.filter((row) => row.risk === 'high')
	const named = { highRisk: highRiskSites.length, listed: boneSiteRows.length }
	return [
		screeningFinding(state('screening.bone-site', named), {
			side,
			level: 'caution',
			basis: {
				rule: 'bone stress by site',
				source: 'Am Fam Physician 2003;67:85; lists partly from memory',
				strength: 'expert',
			},
		}),
	]
}
