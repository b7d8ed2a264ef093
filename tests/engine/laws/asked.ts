/** Laws of the questions: few, each named once, and settling them is enough to sign. */
import { isHeld } from '../../../shared/engine/facts/held.ts'
import { settledPlan } from '../../../shared/engine/prescription/settled.ts'
import { refers, signingBlocks } from '../../../shared/engine/report/signing.ts'
import { noDecisions } from '../../../shared/engine/visit/decisions.ts'
import { agreed, saidByHand } from '../../agreed.ts'
import { type Case, idsOf, type Law, protocol, settledAlone, twice, unless } from './case.ts'

const parts = ['person', 'left', 'right'] as const
/** Nothing is held and nobody else is asked for. */
const isFree = ({ assessment }: Case): boolean =>
	parts.every((part) => assessment.prescription.gate[part].state !== 'held') && !refers(assessment)

/** What still keeps a visit from being signed; how a condition stands is said by hand alone. */
const codesOf = (one: Case, more: object = {}): string[] =>
	signingBlocks(
		{ visit: one.visit, decisions: { ...settledAlone(one), ...more }, raw: {} },
		one.assessment,
		protocol,
	)
		.map(({ code }) => code)
		.filter((code) => !saidByHand.includes(code))

export const asked: Readonly<Record<string, Law>> = {
	'a visit without a gate is signed by settling its questions': (one) =>
		isFree(one) ? codesOf(one).map((code) => `asks for ${code}`) : [],
	'a visit with a gate is signed once it is also said what was done': (one) =>
		codesOf(one, { referralDone: 'Sent the same day.' }).map((code) => `asks for ${code}`),
	'an open question keeps a visit from being signed': ({ visit, assessment }) => {
		const blocks = signingBlocks(
			{ visit, decisions: { ...noDecisions, ...agreed, referralDone: 'Sent.' }, raw: {} },
			assessment,
			protocol,
		)
		return unless(
			blocks.some(({ code }) => code === 'signing.open-questions'),
			'signed without an answer',
		)
	},
	'ids are unique': ({ assessment: { findings, prescription } }) =>
		Object.entries({
			finding: idsOf(findings),
			question: idsOf(prescription.questions),
			pair: idsOf(prescription.pairs),
			owned: idsOf(prescription.owned),
			raise: prescription.raise.pairs.map(({ pair }) => pair),
			change: prescription.changes,
			lacing: prescription.lacing,
		}).flatMap(([kind, ids]) => twice(ids).map((id) => `${kind} ${id} stands twice`)),
	'the gate is asked first, and twelve questions at most': ({ assessment }) => {
		const ids = idsOf(assessment.prescription.questions)
		return [
			...unless(ids[0] === 'gate', `${ids[0]} is asked first`),
			...unless(ids.length <= 12, `${ids.length} questions`),
		]
	},
	'each caution is read under one question that is asked': ({ assessment }) => {
		const { questions } = assessment.prescription
		return assessment.findings.flatMap(({ id, level }) => {
			const under = questions.filter(({ because }) => because.includes(id))
			const isRead = under.length === 1 && under[0]?.held === false
			if (level === 'caution' || level === 'stop')
				return unless(isRead, `${id} is read under ${idsOf(under).join(' and ') || 'nothing'}`)
			return unless(under.length <= 1, `${id} is read twice`)
		})
	},
	'what is settled as proposed stands as proposed': (one) => {
		const plan = settledPlan(one.assessment, settledAlone(one))
		const { raise, pairs, owned, insert, changes, lacing, review } = one.assessment.prescription
		const proposed = { raise, pairs, owned, insert, changes, lacing, review }
		return Object.entries(proposed).flatMap(([part, value]) =>
			unless(
				JSON.stringify(plan[part as keyof typeof proposed]) === JSON.stringify(value),
				`${part} turned in settling`,
			),
		)
	},
	'acts alone lift no hold': (one) => {
		const { assessment } = one
		const decisions = { ...settledAlone(one), referralDone: 'Sent, advised, letter written.' }
		const { gate } = settledPlan(assessment, decisions)
		const before = assessment.prescription.gate
		return unless(JSON.stringify(gate) === JSON.stringify(before), 'the gate opened by an act')
	},
	'the review comes after the visit': ({ visit, assessment: { prescription } }) =>
		unless(
			prescription.review === undefined || prescription.review.date > visit.visitDate,
			`reviewed on ${prescription.review?.date}`,
		),
	'at most three priorities, ranked, none of them a purchase that is held': ({ assessment }) => {
		const { priorities, gate } = assessment.prescription
		const ranks = priorities.map(({ rank }) => rank)
		const buys = priorities.filter(({ code }) => code === 'priority.buy')
		return [
			...unless(
				ranks.every((rank, at) => rank === at + 1),
				`ranks ${ranks.join(' ')}`,
			),
			...unless(ranks.length <= 3, `${ranks.length} priorities`),
			...unless(!isHeld(gate, 'purchase') || buys.length === 0, 'buys what is held'),
		]
	},
}
