/** What a record asks for: a signed visit, or the plan of a season. Each is opened once. */
import { reviewInFew } from '../../../shared/desk/players/plan-in-few.ts'
import { duesOfVisit } from '../../../shared/desk/recall/due.ts'
import type { Due } from '../../../shared/desk/recall/item.ts'
import { type Referred, referredIn } from '../../../shared/desk/recall/referral.ts'
import { pairName } from '../../../shared/engine/report/pair-names.ts'
import { speakFrom } from '../../../shared/engine/words/speak.ts'
import { assessmentOf } from '../records/assessment.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { basisDigest, stopped } from '../season/basis.ts'
import { tryVisit } from '../visits/reading.ts'
import type { VisitLine } from '../visits/visits.ts'

type Needs = Pick<Memory, 'clinic' | 'recall'>
/** As much of a signed visit as recall asks for. */
export interface VisitAsks {
	dues: Due[]
	/** what the review is for, for those who treat */
	why: string | undefined
	review: string | undefined
	/** names of the pairs, by id */
	pairs: ReadonlyMap<string, string>
	referred: Referred
	signedAt: string
	signedBy: string
	/** what of it a plan of the season rests on */
	basis: string
	holdsSeason: boolean
}
/** As much of a plan of the season. */
export interface PlanAsks {
	/** its last day */
	to: string
	basis: string
	/** ISO moment it was made */
	at: string
}
const t = speakFrom()

/** What a version of a visit asks for, or why it cannot be read. */
export function visitAsks(
	{ clinic, recall }: Needs,
	deps: Deps,
	line: VisitLine,
): VisitAsks | string {
	const known = recall.visits.get(line.record)
	if (known !== undefined) return known
	const read = readVisit(clinic, deps, line)
	recall.visits.set(line.record, read)
	return read
}
function readVisit(
	{ protocol }: Pick<Memory['clinic'], 'protocol'>,
	deps: Deps,
	line: VisitLine,
): VisitAsks | string {
	const read = tryVisit(deps, line)
	if ('trouble' in read) return read.trouble
	const { visitId, visit, decisions, signedAt, signedBy } = read.visit
	try {
		const assessment = assessmentOf(read.visit)
		const signed = { visit, decisions, assessment }
		const basis = { from: 'visit' as const, visit, decisions, earlier: [], kept: assessment }
		const review = reviewInFew(signed)
		return {
			dues: duesOfVisit(visitId, signed),
			why: review?.why,
			review: review?.date,
			pairs: new Map((visit.footwear ?? []).map(({ id }) => [id, pairName(id, visit, t)])),
			referred: referredIn(visitId, signed),
			signedAt,
			signedBy: signedBy.name,
			basis: basisDigest(basis),
			holdsSeason: stopped(basis, protocol) !== undefined,
		}
	} catch (error) {
		if (error instanceof Refusal) return error.message
		throw error
	}
}
/** What a plan of the season asks for, or why it cannot be read. @param record of the plan */
export function planAsks(
	{ recall }: Pick<Memory, 'recall'>,
	{ openRecord }: Deps,
	record: string,
): PlanAsks | string {
	const known = recall.plans.get(record)
	if (known !== undefined) return known
	const read = readPlan(openRecord, record)
	recall.plans.set(record, read)
	return read
}
function readPlan(openRecord: Deps['openRecord'], record: string): PlanAsks | string {
	try {
		const { value, at } = openRecord('season', record)
		if (value.what !== 'plan') return `Record ${record} is no plan of a season.`
		return { to: value.plan.season.to, basis: value.basis, at }
	} catch (error) {
		if (error instanceof Refusal) return error.message
		throw error
	}
}
