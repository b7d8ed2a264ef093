/** The clinician of the letterhead is the owner: nobody else changes that name and registration. */
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'

const fields = [
	['name', 'Clinician name'],
	['registration', 'Registration number'],
] as const

/** @throws Refusal where somebody but the owner would change who stands under the reports */
export function refuseNamingOwner(
	{ clinic, people }: Pick<Memory, 'clinic' | 'people'>,
	letterhead: Clinic,
): void {
	const now = clinic.letterhead?.clinician
	if (!now || people.acts().role === 'owner') return
	const problems = fields.flatMap(([field, title]) => {
		const given = letterhead.clinician[field]
		return given === now[field]
			? []
			: [
					{
						path: `clinician.${field}`,
						message: `${title} is the owner's, given "${given}", allowed: "${now[field]}"`,
					},
				]
	})
	if (problems.length > 0)
		throw new Refusal(
			'people.owner-only',
			'Only the owner may change the name and the registration of the letterhead. Nothing was ' +
				'changed: leave both as they are, or ask the owner.',
			problems,
		)
}
