/** The assessment that was frozen in a signed visit. */
import { z } from 'zod'
import type { SignedVisit } from '../../../shared/contract.ts'
import type { KeptAssessment } from '../../../shared/engine/findings/assessment.ts'
import { Refusal } from './refusal.ts'

const group = z.looseObject({})
/** The rooms that every assessment has had; what they say was frozen under the visit's digest. */
const rooms = z.looseObject({
	format: z.literal('lastwright-assessment'),
	version: z.literal(1),
	visitDate: z.string(),
	ageYears: z.number(),
	sizing: group,
	ankle: group,
	posture: group,
	screening: group,
	footwear: group,
	loading: group,
	insert: group,
	findings: z.array(group),
	missing: z.array(group),
})
const isAssessment = (value: unknown): value is KeptAssessment => rooms.safeParse(value).success

/** @throws Refusal where it is not the assessment of a version that this one knows */
export function assessmentOf({
	visitId,
	visit,
	assessment,
}: Pick<SignedVisit, 'visitId' | 'visit' | 'assessment'>): KeptAssessment {
	if (isAssessment(assessment)) return assessment
	throw new Refusal(
		'records.unreadable-assessment',
		`The assessment of the visit of ${visit.visitDate} (${visitId}) cannot be read by this ` +
			'version. The visit itself and its report can be opened. Install the newest version to read it.',
	)
}
