/** The names of a clinic and its people: what a stranger tries first as a passphrase. */
import type { Clinic } from '../../engine/report/clinic.ts'

interface Named {
	name: string
	registration: string
}
/** @param people who work there beside the clinician of the letterhead */
export function namesToGuess(
	clinic: Pick<Clinic, 'name' | 'phone' | 'email' | 'clinician'> | undefined,
	people: readonly Named[] = [],
): string[] {
	const ofClinic = clinic ? [clinic.name, clinic.phone ?? '', clinic.email ?? ''] : []
	const named = clinic ? [clinic.clinician, ...people] : people
	return [...ofClinic, ...named.flatMap(({ name, registration }) => [name, registration])]
		.map((name) => name.trim())
		.filter(Boolean)
}
