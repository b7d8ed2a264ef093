/** The screening room: stop-and-refer questions, Ottawa rules and clot score, to one action. A negative screen never clears. */
import { type Action, actions, type ScreeningItem, type ScreeningResult } from '../assessment.ts'
import type { Basis, Finding, FindingSide, Level } from '../finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import type { Visit } from '../visit/visit.ts'
import { conditionRows, flagRows } from './flags.ts'
import { ottawa } from './ottawa.ts'
import { wells } from './wells.ts'

const worse = (a: Action, b: Action): Action => (actions.indexOf(a) >= actions.indexOf(b) ? a : b)
const levelOf = (action: Action): Level => (action === 'proceed' ? 'note' : action === 'letter' ? 'caution' : 'stop')
const finding = (id: string, side: FindingSide, level: Level, says: string, basis: Basis, because: Finding['because'] = []): Finding => ({ id, topic: 'screening', side, level, says, because, basis })

/** @returns every question with its state, and the highest action; a question not asked stays 'not-asked' */
export function screening(visit: Visit, protocol: Protocol): ScreeningResult {
	const answers = visit.screening ?? {}
	const age = ageYears(visit.player.birthDate, visit.visitDate)
	const minor = age < protocol.value('screening.minorBelowYears')
	const items: ScreeningItem[] = flagRows.map((row) => {
		const answer = answers[row.key]
		const raised = row.key === 'lisfrancSuspected' && answers.injury?.unableToBearWeightNow === true ? 'same-day' : minor ? (row.minorAction ?? row.action) : row.action
		return { id: `screening.${row.key}`, side: 'none', state: answer === undefined ? 'not-asked' : answer ? 'yes' : 'no', action: answer === true ? raised : 'proceed', says: row.says, basis: { rule: 'general warning signs', source: row.source, strength: row.strength } }
	})
	for (const recorded of visit.conditions ?? []) {
		const row = conditionRows.find((one) => one.condition === recorded.condition && one.statuses.includes(recorded.status))
		if (row) items.push({ id: `screening.condition-${row.condition}${recorded.side === 'none' ? '' : `.${recorded.side}`}`, side: recorded.side, state: 'yes', action: row.action, says: row.says, basis: { rule: 'recorded conditions', source: row.source, strength: row.strength } })
	}
	const result: ScreeningResult = { action: 'proceed', items, ottawa: {}, findings: [] }
	addOttawa(visit, age, protocol, result)
	if (answers.wells) {
		const reading = wells(answers.wells, minor, protocol)
		result.wells = reading.result
		const because = reading.result.score === undefined ? [] : [{ measure: 'Wells score', value: reading.result.score }]
		const basis = protocol.basis('Wells two-level score', 'screening.wellsLikelyScore')
		items.push({ id: 'screening.wells', side: 'none', state: reading.suspicion ? 'yes' : reading.notAsked > 0 ? 'not-asked' : 'no', action: reading.suspicion ? 'same-day' : 'proceed', says: `Signs that can go with a clot in the leg: medical review the same day.${minor ? ' The score is not used under 18 years.' : ' The score goes into the letter; it does not decide the referral.'}`, basis })
		if (reading.notAsked > 0) result.findings.push(finding('screening.wells-incomplete', 'none', 'caution', `${reading.notAsked} of the 10 clot questions were not asked: the score may be different.`, basis, because))
	}
	for (const item of items) {
		result.action = worse(result.action, item.action)
		if (item.action !== 'proceed') result.findings.push(finding(item.id, item.side, levelOf(item.action), item.says, item.basis, [{ measure: 'Answer', value: 'yes' }]))
	}
	const unasked = items.filter((item) => item.state === 'not-asked').length
	if (result.action === 'proceed') result.findings.push(finding('screening.nothing-recorded', 'none', 'note', `No listed warning sign recorded. This is not a clearance. ${unasked} ${unasked === 1 ? 'question was' : 'questions were'} not asked or not completed.`, { rule: 'negative screen', source: 'common practice, no source', strength: 'practice' }, [{ measure: 'Questions not asked', value: unasked }]))
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
		if (state === 'met') result.items.push({ id, side, state: 'yes', action: 'same-day', says: `Ottawa ${part} rule met: X-ray of the ${side} ${part} the same day.`, basis })
		else if (state === 'not-applicable') result.items.push({ id, side, state: 'not-asked', action: read.quiet ? 'proceed' : 'same-day', says: `The Ottawa ${part} rule cannot be used (${read.notApplicableBecause.join(', ')}): have the injury seen the same day.`, basis })
		else result.items.push({ id, side, state: state === 'incomplete' ? 'not-asked' : 'no', action: 'proceed', says: state === 'incomplete' ? `Ottawa ${part} rule incomplete: ask the missing questions.` : `Ottawa ${part} rule not met. This does not say that nothing is broken: look again in 5 to 7 days.`, basis })
		if (state === 'incomplete') result.findings.push(finding(`screening.ottawa-${part}-incomplete.${side}`, side, 'caution', `The Ottawa ${part} rule is incomplete for the ${side} side: a missing answer could mean an X-ray. Complete it before going on.`, basis))
		if (state === 'not-met') result.findings.push(finding(`screening.ottawa-${part}-not-met.${side}`, side, 'note', `Ottawa ${part} rule not met on the ${side} side. This does not say that nothing is broken: look again in 5 to 7 days.`, basis))
	}
	if (read.newlyUnable && read.ankle !== 'met' && read.foot !== 'met' && read.ankle !== 'not-applicable')
		result.items.push({ id: `screening.newly-unable.${side}`, side, state: 'yes', action: 'imaging', says: `Cannot take four steps now on the ${side} side, although the Ottawa rule is not met: urgent imaging.`, basis })
	if (read.tenderWithoutPain) result.findings.push(finding(`screening.tender-without-pain.${side}`, side, 'caution', `Bone tenderness on the ${side} side without pain recorded in that zone: the rule says no film, your judgement decides.`, basis))
}
