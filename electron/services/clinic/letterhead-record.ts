/** The letterhead as a record holds it, read as far as it can be. */
import { type Clinic, clinicSchema } from '../../../shared/engine/report/clinic.ts'
import { problemLine, problemsOf } from '../../../shared/engine/visit/problems.ts'

export interface ReadLetterhead {
	/** undefined where a letterhead cannot be without what is unreadable */
	clinic: Clinic | undefined
	/** what could not be read, a line each */
	problems: string[]
}
/** Reads a record's value; what a letterhead can be without is left out where it cannot stand. */
export function readLetterhead(value: unknown): ReadLetterhead {
	const whole = clinicSchema.safeParse(value)
	if (whole.success) return { clinic: whole.data, problems: [] }
	const problems = problemsOf(whole.error, value).map(problemLine)
	const wrong = new Set(whole.error.issues.flatMap(({ path: [field] }) => field ?? []))
	if (value === null || typeof value !== 'object') return { clinic: undefined, problems }
	const known = Object.keys(clinicSchema.shape)
	const rest = clinicSchema.safeParse(
		Object.fromEntries(
			Object.entries(value).filter(([field]) => known.includes(field) && !wrong.has(field)),
		),
	)
	return { clinic: rest.success ? rest.data : undefined, problems }
}
