/** What a record that comes home says: as far as it can be checked against what stands here. */
import { z } from 'zod'
import { contract } from '../../../shared/contract.ts'
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { awayProblems, awayTrailSchema } from '../../../shared/desk/records/away-trail.ts'
import { consentProblems, consentSchema } from '../../../shared/desk/records/consent.ts'
import type { Role } from '../../../shared/desk/workplace/call.ts'
import { digestOf } from '../../../shared/engine/plain/canonical.ts'
import { sha256Of } from '../visits/drawing.ts'
import type { Arrival } from './arrival.ts'
import { followUpTrouble, recallTrouble } from './check-recall.ts'
import type { Trouble } from './check-record.ts'
import { signedParts, visitTrouble } from './check-visit.ts'
import { readable } from './versions.ts'

const refused = (because: string): Trouble => ({ outcome: 'refused', because })

const ofKind = new Map<string, (arrival: Arrival, record: Carried) => Trouble | undefined>([
	['visit', visitTrouble],
	['report', reportTrouble],
	['document', documentTrouble],
	['visit-note', noteTrouble],
	['consent', consentTrouble],
	['answer', answerTrouble],
	['merge', mergeTrouble],
	['recall', recallTrouble],
	['follow-up', followUpTrouble],
	['trail', trailTrouble],
	['installation', installationTrouble],
])
export const contentTrouble = (arrival: Arrival, record: Carried): Trouble | undefined =>
	ofKind.get(record.kind)?.(arrival, record)
const bytesSchema = z.looseObject({
	base64: z.base64(),
	sha256: z.string(),
	/** of a page; without one it is the player's report */
	kind: z.string().default('player'),
	/** what the page was drawn from; absent in pages of program 0.1.0 */
	document: z.looseObject({ version: z.unknown(), content: z.unknown() }).optional(),
})
type Bytes = z.infer<typeof bytesSchema>
const isWhole = ({ base64, sha256 }: Bytes): boolean =>
	sha256Of(Buffer.from(base64, 'base64')) === sha256
/** Bytes and document of a page must be those that the signed visit names by their sums. */
function reportTrouble({ deps: { store } }: Arrival, { value, follows }: Carried) {
	const page = bytesSchema.safeParse(value).data
	const visit = follows === undefined ? undefined : signedParts(readable(store, follows)?.value)
	if (!page || !visit) return refused('is no page of a visit that is here')
	const { kind, document, sha256 } = page
	const named = visit.pages?.find((other) => other.kind === kind)
	const expected = kind === 'player' ? visit.reportSha256 : named?.sha256
	const isDocument =
		document === undefined ||
		named === undefined ||
		digestOf({ version: document.version, content: document.content }) === named.documentSha256
	return isWhole(page) && sha256 === expected && isDocument
		? undefined
		: refused('is not the one that was signed: its SHA-256 is another one')
}
/** The bytes of a document must be those of its sum. */
function documentTrouble(_: Arrival, { value }: Carried) {
	const document = bytesSchema.safeParse(value).data
	return document && isWhole(document)
		? undefined
		: refused('is not the document whose SHA-256 it bears')
}
const noteSchema = z.looseObject({ what: z.string(), by: z.string() })
/** A countersignature, or that a visit is in error, counts for what it permits: only who may makes it. */
function noteTrouble({ memory: { people } }: Arrival, { value }: Carried) {
	const note = noteSchema.safeParse(value).data
	if (!note) return refused('is no note on a visit')
	const call = noteCalls.get(note.what)
	if (!call) return refused('is a note of a sort that is not known here')
	const who: readonly Role[] = contract[call].who
	const isBy = people
		.all()
		.some(
			({ active, role, name }) =>
				active && who.includes(role) && (note.by === name || note.by.startsWith(`${name}, `)),
		)
	return isBy
		? undefined
		: refused(`was written by ${note.by}, who is not here one who may write it`)
}
/** The call by which each sort of note is written. */
const noteCalls = new Map<string, keyof typeof contract>([
	['in-error', 'visits.markInError'],
	['countersign', 'visits.countersign'],
	['late-entry', 'visits.addNote'],
	['statement', 'visits.addNote'],
])
function consentTrouble({ today }: Arrival, { value }: Carried) {
	const consent = consentSchema.safeParse(value).data
	if (!consent) return refused('is no consent')
	const [problem] = consentProblems(consent, today)
	if (problem) return refused(`cannot stand (${problem.path}: ${problem.message})`)
	return consent.withdrawn !== undefined && consent.withdrawn > today
		? refused(`was withdrawn on ${consent.withdrawn}, which is not yet come`)
		: undefined
}
const answerSchema = z.looseObject({ joins: z.array(z.string()) })
/** An answer may put to rest only records of the player it is about. */
function answerTrouble({ deps: { store } }: Arrival, { value, about = '' }: Carried) {
	const answer = answerSchema.safeParse(value).data
	if (!answer) return refused('is no answer')
	const theirs = new Set(store.recordsAbout(about))
	return answer.joins.every((id) => theirs.has(id))
		? undefined
		: refused('puts records of others to rest')
}
const mergeSchema = z.looseObject({
	mergeId: z.string(),
	from: z.string(),
	into: z.string(),
	undone: z.boolean(),
})
/** Two players are shown as one in one way round only, here and on the laptop. */
function mergeTrouble({ deps: { store } }: Arrival, { value }: Carried) {
	const merge = mergeSchema.safeParse(value).data
	if (!merge) return refused('is no joining of two players')
	if (merge.undone) return undefined
	const into = new Map<string, string>()
	const standing = new Map<string, z.infer<typeof mergeSchema>>()
	for (const record of store.load(['merge']).records) {
		const other = mergeSchema.safeParse(record.value).data
		if (other) standing.set(other.mergeId, other)
	}
	for (const other of standing.values()) if (!other.undone) into.set(other.from, other.into)
	if (into.has(merge.from)) return refused('joins a player who is joined with another one already')
	const passed = new Set<string>()
	for (let at: string | undefined = merge.into; at !== undefined; at = into.get(at)) {
		if (at === merge.from || passed.has(at))
			return refused('joins two players the other way round than here')
		passed.add(at)
	}
	return undefined
}
/** The laptop's own rows, of this outing, whole as they left it. */
function trailTrouble({ pack: { manifest } }: Arrival, { value, origin }: Carried) {
	const trail = awayTrailSchema.safeParse(value).data
	if (!trail) return refused('is no audit trail of a laptop')
	const maker = manifest.installation?.origin
	if (trail.workstationId !== origin || (maker !== undefined && maker !== origin))
		return refused('is the audit trail of another installation than the file names')
	if (trail.packId !== manifest.answers) return refused('is the audit trail of another pack')
	const [problem] = awayProblems([{ ...trail, problems: [] }])
	return problem === undefined ? undefined : refused(`is not whole: ${problem}`)
}
const installationSchema = z.looseObject({ origin: z.string(), publicKey: z.string() })
/** Only the laptop's own, with the key that the file names. */
function installationTrouble({ keys }: Arrival, { value, origin }: Carried) {
	const installation = installationSchema.safeParse(value).data
	return installation?.origin === origin && keys.get(origin) === installation.publicKey
		? undefined
		: refused('is the key of another installation than the file names')
}
