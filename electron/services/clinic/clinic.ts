/** The letterhead and the settings of the records. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import { personRecord } from '../people/keep-person.ts'
import type { PersonEntry } from '../people/memory.ts'
import type { Deps } from '../records/deps.ts'
import type { KeptRecord } from '../records/keep.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { needDrawable } from './logo.ts'

/**
 * The clinician of the letterhead is the owner: their entry changes with it, both or neither, and
 * by the owner alone.
 * @throws Refusal where somebody else changes it, or the logo cannot be drawn
 */
export async function saveClinic(
	{ clinic, people }: Pick<Memory, 'clinic' | 'people'>,
	deps: Deps,
	letterhead: InputOf<'clinic.save'>,
): Promise<OutputOf<'clinic.save'>> {
	const person = people.acts()
	refuseOthersName(person, clinic.letterhead, letterhead)
	await needDrawable(deps, letterhead.logo, clinic.letterhead?.logo, 'logo')
	if (people.atWork?.personId !== person.personId)
		throw new Refusal(
			'Another person took over while the logo was tried. Nothing was changed: save it again.',
		)
	const { clinician } = letterhead
	const owner = people.owner()
	const renamed =
		owner &&
		(owner.name !== clinician.name || owner.registration !== clinician.registration) &&
		personRecord({ ...owner, ...clinician })
	const saved: KeptRecord = {
		kind: 'clinic',
		follows: clinic.recordIds.letterhead,
		value: letterhead,
	}
	deps.keepTogether(renamed ? [saved, renamed] : [saved])
	return {}
}
const nameFields = [
	['name', 'the name'],
	['registration', 'the registration number'],
] as const
/** @throws Refusal where somebody other than the owner changes the owner's name or number */
function refuseOthersName(
	{ role }: Pick<PersonEntry, 'role'>,
	held: Clinic | undefined,
	{ clinician }: Clinic,
): void {
	if (role === 'owner' || !held) return
	const changed = nameFields.filter(([field]) => clinician[field] !== held.clinician[field])
	if (changed.length === 0) return
	throw new Refusal(
		'Only the owner may change the name and registration number of the letterhead. Nothing was ' +
			'changed: ask the owner, or leave them as they are.',
		changed.map(([field, words]) => ({
			path: `clinician.${field}`,
			message:
				`${words} of the owner, given "${clinician[field]}", allowed: ` +
				`"${held.clinician[field]}"`,
		})),
	)
}
export function saveRecordSettings(
	{ clinic }: Pick<Memory, 'clinic'>,
	{ keep }: Deps,
	value: InputOf<'recordSettings.save'>,
): OutputOf<'recordSettings.save'> {
	keep({ kind: 'settings', follows: clinic.recordIds.settings, value })
	return {}
}
