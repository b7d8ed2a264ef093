/**
 * The screening room: stop-and-refer questions, Ottawa rules and clot score, to one action. A
 * negative screen never clears.
 */
import {
	type Action,
	actions,
	type ScreeningItem,
	type ScreeningResult,
} from '../findings/assessment.ts'
import type { Finding, FindingSide, Level } from '../findings/finding.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears, decimalAgeYears } from '../visit/age.ts'
import { bothSides, perSide, rounded } from '../visit/sides.ts'
import { termWords } from '../visit/terms.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { boneSiteRows } from './bone-sites.table.ts'
import { diabeticRisk } from './diabetic.ts'
import { conditionRows, flagRows } from './flags.table.ts'
import { ottawa, probabilityAfter } from './ottawa.ts'
import { signRows } from './signs.ts'
import { siteRow } from './site-row.ts'
import { wells } from './wells.ts'

const worse = (a: Action, b: Action): Action => (actions.indexOf(a) >= actions.indexOf(b) ? a : b)
const levelOf = (action: Action): Level =>
	action === 'proceed' ? 'note' : action === 'letter' ? 'caution' : 'stop'
const finding = (
	id: string,
	side: FindingSide,
	level: Level,
	says: string,
	basis: Basis,
	because: Finding['because'] = [],
): Finding => ({ id, topic: 'screening', side, level, says, because, basis })

/**
 * @returns every question with its state, and the highest action; a question not asked stays
 * 'not-asked'
 */
export function screening(visit: Visit, protocol: Protocol): ScreeningResult {
	const answers = visit.screening ?? {}
	const age = ageYears(visit.player.birthDate, visit.visitDate)
	const minor = age < protocol.value('screening.minorBelowYears')
	const items: ScreeningItem[] = flagRows.map((row) => {
		const answer = answers[row.key]
		const raised =
			row.key === 'lisfrancSuspected' && answers.injury?.unableToBearWeightNow === true
				? 'same-day'
				: minor
					? (row.minorAction ?? row.action)
					: row.action
		return {
			id: `screening.${row.key}`,
			side: 'none',
			state: answer === undefined ? 'not-asked' : answer ? 'yes' : 'no',
			action: answer === true ? raised : 'proceed',
			says: row.says,
			basis: { rule: 'general warning signs', source: row.source, strength: row.strength },
		}
	})
	for (const recorded of visit.conditions ?? []) {
		const row = conditionRows.find(
			(conditionRow) =>
				conditionRow.condition === recorded.condition &&
				conditionRow.statuses.includes(recorded.status),
		)
		if (row)
			items.push({
				id: `screening.condition-${row.condition}${recorded.side === 'none' ? '' : `.${recorded.side}`}`,
				side: recorded.side,
				state: 'yes',
				action: row.action,
				says: row.says,
				basis: { rule: 'recorded conditions', source: row.source, strength: row.strength },
			})
	}
	const result: ScreeningResult = {
		action: 'proceed',
		items,
		ottawa: {},
		blockedSides: [],
		blockedBy: { left: [], right: [] },
		findings: [],
	}
	addOttawa(visit, age, protocol, result)
	addSigns(visit, age, minor, protocol, result)
	addDiabeticFoot(visit, age, protocol, result)
	if (answers.wells) {
		const reading = wells(answers.wells, minor, protocol)
		result.wells = reading.result
		const because =
			reading.result.score === undefined
				? []
				: [{ measure: 'Wells score', value: reading.result.score }]
		const basis = protocol.basis('Wells two-level score', 'screening.wellsLikelyScore')
		items.push({
			id: 'screening.wells',
			side: 'none',
			state: reading.suspicion ? 'yes' : reading.notAsked > 0 ? 'not-asked' : 'no',
			action: reading.suspicion ? 'same-day' : 'proceed',
			says:
				'Signs that can go with a clot in the leg: medical review the same ' +
				`day.${minor ? ' The score is not used under 18 years.' : ' The score goes into the letter; it does not decide the referral.'}`,
			basis,
		})
		if (reading.notAsked > 0)
			result.findings.push(
				finding(
					'screening.wells-incomplete',
					'none',
					'caution',
					`${reading.notAsked} of the 10 clot questions were not asked: the score may be different.`,
					basis,
					because,
				),
			)
	}
	for (const item of items) {
		result.action = worse(result.action, item.action)
		if (item.action !== 'proceed')
			result.findings.push(
				finding(item.id, item.side, levelOf(item.action), item.says, item.basis, [
					{ measure: 'Answer', value: 'yes' },
				]),
			)
	}
	result.blockedBy = perSide((side) => blockersOf(items, side))
	result.blockedSides = bothSides.filter((side) => result.blockedBy[side].length > 0)
	const unasked = items.filter((item) => item.state === 'not-asked').length
	if (result.action === 'proceed')
		result.findings.push(
			finding(
				'screening.nothing-recorded',
				'none',
				'note',
				`No listed warning sign recorded. This is not a clearance. ${unasked} ` +
					`${unasked === 1 ? 'question was' : 'questions were'} not asked or not completed.`,
				{ rule: 'negative screen', source: 'common practice, no source', strength: 'practice' },
				[{ measure: 'Questions not asked', value: unasked }],
			),
		)
	return result
}

function addOttawa(visit: Visit, age: number, protocol: Protocol, result: ScreeningResult): void {
	const injury = visit.screening?.injury
	if (!injury) return
	const { side } = injury
	const read = ottawa(injury, age, visit.screening?.reducedSensation, protocol)
	result.ottawa[side] = { ankle: read.ankle, foot: read.foot }
	const basis = protocol.basis('Ottawa ankle and foot rules', 'screening.ottawaMaxDays')
	for (const part of ['ankle', 'foot'] as const) {
		const state = read[part]
		const id = `screening.ottawa-${part}.${side}`
		if (state === 'met')
			result.items.push({
				id,
				side,
				state: 'yes',
				action: 'same-day',
				says: `Ottawa ${part} rule met: X-ray of the ${side} ${part} the same day.`,
				basis,
			})
		else if (state === 'not-applicable')
			result.items.push({
				id,
				side,
				state: 'not-asked',
				action: read.quiet ? 'proceed' : 'same-day',
				says:
					`The Ottawa ${part} rule cannot be used ` +
					`(${read.notApplicableBecause.join(', ')}): have the injury seen the same day.`,
				basis,
			})
		else
			result.items.push({
				id,
				side,
				state: state === 'incomplete' ? 'not-asked' : 'no',
				action: 'proceed',
				says:
					state === 'incomplete'
						? `Ottawa ${part} rule incomplete: ask the missing questions.`
						: `Ottawa ${part} rule not met. This does not say that nothing is broken: look ` +
							'again in 5 to 7 days.',
				basis,
			})
		if (state === 'incomplete')
			result.findings.push(
				finding(
					`screening.ottawa-${part}-incomplete.${side}`,
					side,
					'caution',
					`The Ottawa ${part} rule is incomplete for the ${side} side: a question is open, and ` +
						'an open question never counts as no. Complete it before going on.',
					basis,
				),
			)
		if (state === 'not-met')
			result.findings.push(
				finding(
					`screening.ottawa-${part}-not-met.${side}`,
					side,
					'note',
					`Ottawa ${part} rule not met on the ${side} side. This does not say that nothing is ` +
						`broken: look again in 5 to 7 days. ${accuracy(age, protocol)}`,
					basis,
				),
			)
	}
	if (
		read.newlyUnable &&
		read.ankle !== 'met' &&
		read.foot !== 'met' &&
		read.ankle !== 'not-applicable'
	)
		result.items.push({
			id: `screening.newly-unable.${side}`,
			side,
			state: 'yes',
			action: 'imaging',
			says:
				`Cannot take four steps now on the ${side} side: urgent imaging, although the ` +
				'Ottawa rule as answered does not ask for it.',
			basis,
		})
	if (read.tenderWithoutPain)
		result.findings.push(
			finding(
				`screening.tender-without-pain.${side}`,
				side,
				'caution',
				`Bone tenderness on the ${side} side without pain recorded in that zone: the rule says ` +
					'no film, your judgement decides.',
				basis,
			),
		)
}

/**
 * How far a negative Ottawa rule can be trusted; the published figures disagree, and both are
 * shown.
 */
function accuracy(age: number, protocol: Protocol): string {
	if (age < protocol.value('screening.minorBelowYears'))
		return (
			'In children and adolescents the rule found ' +
			`${protocol.value('screening.ottawaSensitivityYoung')} of 100 fractures (Dowling ` +
			'2009).'
		)
	const left =
		probabilityAfter(
			protocol.value('screening.ottawaPrevalence'),
			protocol.value('screening.ottawaLrMinus'),
		) * 100
	return (
		`An older review leaves about ${rounded(left, 1)} fractures in 100 such players ` +
		'(Bachmann 2003); a review of 2022 found that the rule catches ' +
		`${protocol.value('screening.ottawaSensitivityAdult')} of 100 in adults.`
	)
}

/**
 * Items above a letter that concern this limb: its insert and rotation wait until what was done is
 * recorded.
 */
export function blockersOf(items: readonly ScreeningItem[], side: Side): string[] {
	return items
		.filter(
			(item) =>
				actions.indexOf(item.action) > actions.indexOf('letter') &&
				(item.side === side || item.side === 'both' || item.side === 'none'),
		)
		.map((item) => item.id)
}

function addSigns(
	visit: Visit,
	age: number,
	minor: boolean,
	protocol: Protocol,
	result: ScreeningResult,
): void {
	const answers = visit.screening ?? {}
	for (const row of signRows)
		for (const { side, holds } of row.read(answers, {
			minor,
			ageYears: age,
			decimalAgeYears: decimalAgeYears(visit.player.birthDate, visit.visitDate),
			protocol,
		})) {
			const id = `screening.${row.id}${side === 'none' ? '' : `.${side}`}`,
				basis = row.basis(protocol)
			const action =
				holds === true ? (minor ? (row.minorAction ?? row.action) : row.action) : 'proceed'
			result.items.push({
				id,
				side,
				state: holds === undefined ? 'not-asked' : holds ? 'yes' : 'no',
				action,
				says: holds === false && row.notMet ? row.notMet : row.says,
				basis,
			})
			if (holds === false && row.notMet)
				result.findings.push(
					finding(`${id}-not-met`, side, 'note', row.notMet, basis, [
						{ measure: 'Answers', value: 'rule not met' },
					]),
				)
		}
	const bone = answers.boneStress,
		site = siteRow(bone?.site)
	if (bone && bone.hopPain !== undefined && (site?.risk === 'high' || bone.nightPain === true))
		result.findings.push(
			finding(
				`screening.hop-tested.${bone.side}`,
				bone.side,
				'caution',
				'Do not repeat the hop test: ' +
					`${site?.risk === 'high' ? `${termWords(site.site)} is a high-risk site` : 'there is pain at night or at rest'}.`,
				{ rule: 'hop test', source: 'common practice, no source', strength: 'practice' },
			),
		)
	if (bone && bone.site === undefined && (bone.focalTenderness || bone.loadPain || bone.hopPain))
		result.findings.push(
			finding(
				`screening.bone-site.${bone.side}`,
				bone.side,
				'caution',
				`Name the bone: ${boneSiteRows.filter((boneSiteRow) => boneSiteRow.risk === 'high').length} of the ` +
					`${boneSiteRows.length} listed sites are high risk and change what to do.`,
				{
					rule: 'bone stress by site',
					source: 'Am Fam Physician 2003;67:85; lists partly from memory',
					strength: 'expert',
				},
			),
		)
}

const riskWords = {
	low: ['proceed', 'low risk: foot check every year'],
	moderate: [
		'letter',
		'moderate risk: foot protection service within 6 to 8 weeks, then review every 3 to 6 months',
	],
	high: [
		'letter',
		'high risk: foot protection service within 2 to 4 weeks, then review every 1 to 2 months; ' +
			'no new boot without review and no stud under a place of high pressure',
	],
	active: ['same-day', 'active foot problem: refer within one working day, off the foot meanwhile'],
	incomplete: ['proceed', 'risk not established: complete the questions'],
} as const
function addDiabeticFoot(
	visit: Visit,
	age: number,
	protocol: Protocol,
	result: ScreeningResult,
): void {
	const group = visit.screening?.diabeticFoot
	if (!group) return
	const basis: Basis = {
		rule: 'diabetic foot risk',
		source: 'NICE NG19 (reviewed 2023, unchanged)',
		strength: 'guideline',
	}
	const young =
		age < protocol.value('screening.diabetesAdviceBelowYears')
			? ' Under 12 years: advice to child and family.'
			: age < protocol.value('screening.minorBelowYears')
				? ' From 12 to 17 years the paediatric team checks the feet every year.'
				: ''
	result.diabeticFoot = {}
	for (const side of bothSides) {
		const foot = group[side]
		if (!foot) continue
		const { risk, complete } = diabeticRisk(foot, group.renalReplacement)
		result.diabeticFoot[side] = risk
		const [action, says] = riskWords[risk],
			words = `Diabetic foot, ${side}: ${says}.${young}`
		result.items.push({
			id: `screening.diabetic-foot.${side}`,
			side,
			state: risk === 'incomplete' ? 'not-asked' : action === 'proceed' ? 'no' : 'yes',
			action,
			says: words,
			basis,
		})
		if (action === 'proceed')
			result.findings.push(
				finding(
					`screening.diabetic-foot-${risk}.${side}`,
					side,
					risk === 'incomplete' ? 'caution' : 'note',
					words,
					basis,
				),
			)
		else if (!complete)
			result.findings.push(
				finding(
					`screening.diabetic-foot-open.${side}`,
					side,
					'caution',
					`Not every question about the ${side} foot was asked: the risk may be higher than ` +
						`${risk}.`,
					basis,
				),
			)
	}
	if (group.limbOrLifeThreat !== undefined)
		result.items.push({
			id: 'screening.diabetic-threat',
			side: 'none',
			state: group.limbOrLifeThreat ? 'yes' : 'no',
			action: group.limbOrLifeThreat ? 'emergency' : 'proceed',
			says: 'Limb or life in danger from a diabetic foot: emergency department now.',
			basis,
		})
}
