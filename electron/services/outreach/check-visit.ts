/** A signed visit that comes home: whole as it was signed, by someone here who may sign. */
import { z } from 'zod'
import { contract, type SignedVisit } from '../../../shared/contract.ts'
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { staffRoles } from '../../../shared/desk/records/people.ts'
import type { Role } from '../../../shared/desk/workplace/call.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { digestOf } from '../../../shared/engine/plain/canonical.ts'
import type { Arrival } from './arrival.ts'
import type { Trouble } from './check-record.ts'
import { readable } from './versions.ts'

/** What of a signed visit the checks look at; the digest is over all of it, whatever it is. */
const signedSchema = z.looseObject({
	visitId: z.string(),
	playerId: z.string(),
	signedAt: z.iso.datetime({ offset: true }),
	signedOn: z.iso.date().optional(),
	signedBy: z.looseObject({ name: z.string() }),
	visit: z.looseObject({ visitDate: z.iso.date() }),
	digest: z.string(),
	reportSha256: z.string(),
	/** every page that was kept at signing; absent in visits of program 0.1.0 */
	pages: z
		.array(z.looseObject({ kind: z.string(), sha256: z.string(), documentSha256: z.string() }))
		.optional(),
	version: z.int().min(2).optional(),
	amends: z.looseObject({ reason: z.string(), digest: z.string() }).optional(),
	signer: z.looseObject({ personId: z.string(), role: z.enum(staffRoles) }).optional(),
})
export type SignedParts = z.infer<typeof signedSchema>
/** Undefined where it is no signed visit. */
export const signedParts = (value: unknown): SignedParts | undefined =>
	signedSchema.safeParse(value).data
/** The digest of a signed visit as it was made at signing: over all but itself. */
function signedDigest(value: object): string {
	const { digest: _, ...frozen } = value as Partial<SignedVisit>
	return digestOf(frozen)
}
const refused = (because: string): Trouble => ({ outcome: 'refused', because })

export function visitTrouble(arrival: Arrival, record: Carried): Trouble | undefined {
	const signed = signedParts(record.value)
	if (!signed) return refused('is no signed visit')
	if (signedDigest(signed) !== signed.digest)
		return refused('is not as it was signed: its digest is another one')
	return (
		signerTrouble(arrival, signed) ??
		daysTrouble(arrival, record, signed) ??
		versionTrouble(arrival, record, signed)
	)
}
/** Whoever signed must be at work here, and may sign. */
function signerTrouble({ memory: { people, clinic } }: Arrival, signed: SignedParts) {
	const { signer, signedBy, amends } = signed
	if (!signer) return refused('does not say who of the people here signed it')
	const person = people.byId.get(signer.personId)
	if (!person) return refused(`was signed by ${signedBy.name}, who is not among the people here`)
	if (!person.active)
		return refused(`was signed by ${person.name}, who does not work here any more`)
	if (person.role !== signer.role)
		return refused(
			`was signed as ${signer.role} by ${person.name}, who works here as ${person.role}`,
		)
	const who: readonly Role[] = contract[amends ? 'visits.amend' : 'visits.sign'].who
	if (!who.includes(person.role))
		return refused(`was signed by ${person.name} (${person.role}), who may not sign it`)
	const names = [
		person.name,
		...(person.role === 'owner' ? [clinic.letterhead?.clinician.name] : []),
	]
	return names.includes(signedBy.name)
		? undefined
		: refused(`bears the name ${signedBy.name}, but ${person.name} signed it`)
}
/** Signed while the laptop was away, and not after today. */
function daysTrouble(
	{ days: { first, last }, today, keys }: Arrival,
	{ origin }: Carried,
	{ signedAt, signedOn }: SignedParts,
): Trouble | undefined {
	const on = [signedOn ?? dayHere(new Date(signedAt)), dayHere(new Date(signedAt))].sort()
	const [earliest = '', latest = ''] = on
	if (latest > today) return refused(`was signed on ${latest}, which is not yet come`)
	// what another laptop wrote, and this one only carries, has days of its own
	if (keys.size > 0 && !keys.has(origin)) return undefined
	if ((first !== undefined && earliest < first) || latest > last)
		return refused(
			`was signed on ${earliest}, and the pack was open from ${first ?? 'the start'} to ${last}`,
		)
	return undefined
}
/** A further version follows the one it amends; a first one takes the place of none. */
function versionTrouble(
	{ deps: { store } }: Arrival,
	{ follows }: Carried,
	{ visitId, version, amends }: SignedParts,
): Trouble | undefined {
	const versions = store.cardsOf('visit', visitId).map(({ record }) => record)
	if ((version === undefined) !== (amends === undefined))
		return refused('is no first version and does not say what it amends')
	if (!amends)
		return versions.length === 0 && follows === undefined
			? undefined
			: refused('would take the place of a visit that is signed already')
	const before = follows === undefined ? undefined : signedParts(readable(store, follows)?.value)
	if (!before || before.visitId !== visitId || before.digest !== amends.digest)
		return refused('amends a version that is not here as it says')
	return (before.version ?? 1) + 1 === version
		? undefined
		: refused(`says it is version ${version}, and follows version ${before.version ?? 1}`)
}
