/** Bone stress injury, by site, tenderness and the kind of pain. */
import type { Finding } from '../../findings/finding.ts'
import { termWords } from '../../visit/terms.ts'
import type { Screening } from '../../visit/visit.ts'
import { above, allOf, anyOf, type Tri } from '../answers.ts'
import { boneSiteRows } from '../bone-sites.table.ts'
import { type Screened, screeningFinding } from '../conclusions.ts'
import { siteRow } from '../site-row.ts'
import { type Ground, type SignRow, signOfSide } from './sign-row.ts'
import { cancerGuideline, fromMemory } from './sources.ts'

type BoneStress = NonNullable<Screening['boneStress']>
type Site = BoneStress['site']
const bySite: Ground = {
	source:
		'Am Fam Physician 2003;67:85; Ekstrand and van Dijk 2013, Br J Sports Med 47:754; sites ' +
		'partly from memory',
	strength: 'expert',
}
const noReassurance =
	' This does not say that nothing is wrong: stop and come back if pain stays, worsens, or ' +
	'comes at night.'

/** A bone that a finger cannot reach. */
const deep = (site: Site): Tri => (site === undefined ? undefined : siteRow(site)?.deep === true)
const highRisk = (site: Site): Tri => {
	const row = siteRow(site)
	return row ? row.risk === 'high' : undefined
}
/** A site not named is treated like a low-risk one, and the name is asked for. */
const lowRiskOrUnnamed = (site: Site): boolean => siteRow(site)?.risk !== 'high'

export const boneStressSigns: readonly SignRow[] = [
	signOfSide('boneStress', {
		id: 'bone-stress-hip',
		holds: ({ site, loadPain, focalTenderness, nightPain }) =>
			allOf(deep(site), anyOf(loadPain, focalTenderness, nightPain)),
		action: 'same-day',
		says:
			'Bone stress injury of the hip neck suspected: no weight on the leg, no hop test, ' +
			'emergency department the same day.',
		ground: fromMemory,
	}),
	signOfSide('boneStress', {
		id: 'bone-stress-high',
		holds: ({ site, focalTenderness, hopPain, loadPain, nightPain }) =>
			allOf(highRisk(site), anyOf(focalTenderness, hopPain), anyOf(loadPain, hopPain, nightPain)),
		action: 'imaging',
		says:
			'Bone stress injury at a high-risk site suspected: stop impact, no weight on the ' +
			'foot, MRI or CT. A normal plain film does not rule it out.',
		notMet: `Bone stress rule for a high-risk site not met.${noReassurance}`,
		ground: bySite,
	}),
	signOfSide('boneStress', {
		id: 'bone-stress-low-imaging',
		holds: ({ site, focalTenderness, loadPain, hopPain, nightPain, weeksOfPain }, { protocol }) =>
			allOf(
				lowRiskOrUnnamed(site),
				focalTenderness,
				anyOf(loadPain, hopPain),
				anyOf(nightPain, hopPain, above(weeksOfPain, protocol.value('screening.boneStressWeeks'))),
			),
		action: 'imaging',
		says:
			'Focal bone pain with rest pain, a painful hop or more than two weeks of pain: stop ' +
			'impact and arrange imaging. A normal plain film does not rule out a bone stress ' +
			'injury.',
		ground: { key: 'screening.boneStressWeeks' },
	}),
	signOfSide('boneStress', {
		id: 'bone-stress-rest-pain',
		holds: ({ nightPain }) => nightPain,
		action: 'imaging',
		says:
			'Bone pain at night or at rest: no hop test, no impact, arrange imaging. In a young ' +
			'player ask for an X-ray within 48 hours.',
		ground: cancerGuideline,
	}),
	signOfSide('boneStress', {
		id: 'bone-stress-low',
		holds: ({ site, focalTenderness, hopPain, loadPain }) =>
			allOf(lowRiskOrUnnamed(site), anyOf(focalTenderness, hopPain), anyOf(loadPain, hopPain)),
		action: 'letter',
		says:
			'Bone stress injury is possible (no high-risk site named): relative rest without ' +
			'impact, write to the doctor, review in two weeks.',
		notMet: `Bone stress rule not met.${noReassurance}`,
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
	const why =
		highRiskSite === undefined
			? 'there is pain at night or at rest'
			: `${termWords(highRiskSite)} is a high-risk site`
	return [
		screeningFinding({
			id: `screening.hop-tested.${side}`,
			side,
			level: 'caution',
			says: `Do not repeat the hop test: ${why}.`,
			basis: { rule: 'hop test', source: 'common practice, no source', strength: 'practice' },
		}),
	]
}
function unnamedBone({ side, site, focalTenderness, loadPain, hopPain }: BoneStress): Finding[] {
	const painful = focalTenderness || loadPain || hopPain
	if (site !== undefined || !painful) return []
	const highRiskSites = boneSiteRows.filter((row) => row.risk === 'high')
	return [
		screeningFinding({
			id: `screening.bone-site.${side}`,
			side,
			level: 'caution',
			says:
				`Name the bone: ${highRiskSites.length} of the ${boneSiteRows.length} listed sites are ` +
				'high risk and change what to do.',
			basis: {
				rule: 'bone stress by site',
				source: 'Am Fam Physician 2003;67:85; lists partly from memory',
				strength: 'expert',
			},
		}),
	]
}
