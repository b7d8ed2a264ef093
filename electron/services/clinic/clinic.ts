/** The letterhead and the settings of the records. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { personRecord } from '../people/keep-person.ts'
import { refuseNamingOwner } from '../people/owner-name.ts'
import type { Deps } from '../records/deps.ts'
import type { KeptRecord } from '../records/keep.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { needDrawable } from './logo.ts'
import { needPrintableLetterhead } from './printable.ts'

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
	refuseNamingOwner({ clinic, people }, letterhead)
	needPrintableLetterhead(letterhead)
	await needDrawable(deps, letterhead.logo, clinic.letterhead?.logo, 'logo')
	if (people.atWork?.personId !== person.personId)
		throw new Refusal(
			'clinic.taken-over',
			'Another person took over while the logo was tried. Nothing was changed: save it again.',
		)
	const { clinician } = letterhead
	const owner = people.owner()
	refuseNamingOwner({ clinic, people }, letterhead)
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
export function saveRecordSettings(
	{ clinic }: Pick<Memory, 'clinic'>,
	{ keep }: Deps,
	value: InputOf<'recordSettings.save'>,
): OutputOf<'recordSettings.save'> {
	keep({ kind: 'settings', follows: clinic.recordIds.settings, value })
	return {}
}
