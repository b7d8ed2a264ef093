/** What the form of the agreement does to a draft, and what of it is asked still. Pure. */
import type { DraftContent } from '../../../../../shared/contract.ts'
import { isMinor } from '../../../../../shared/engine/facts/age.ts'
import type { Protocol } from '../../../../../shared/engine/protocol/protocol.ts'
import { decidesAlone } from '../../../../../shared/engine/report/agreement-blocks.ts'
import {
	type Agreement,
	type Party,
	parties,
	usualAgreement,
} from '../../../../../shared/engine/visit/agreement.ts'
import { decide } from '../../decide/decisions.ts'
import { withWritten, writtenAt } from '../written.ts'

export const agreementOf = ({ decisions }: DraftContent): Agreement => decisions.agreement ?? {}
/** Sets one answer by its path within the agreement; undefined takes it out. */
export const answered = (draft: DraftContent, path: string, value: unknown): DraftContent =>
	withWritten(draft, 'agreement', path, value)
export const answerAt = (draft: DraftContent, path: string): unknown =>
	writtenAt(draft, 'agreement', path)

/** The guardian's name is taken from the record with the tick that names it, and stays then. */
export function withGuardian(draft: DraftContent): DraftContent {
	const { guardianName } = agreementOf(draft)
	const name = draft.visit.player.guardian?.name
	return guardianName === undefined && name !== undefined
		? answered(draft, 'guardianName', name)
		: draft
}
/** Ticks one of several, or takes the tick out. */
export function ticked(draft: DraftContent, path: string, isTicked: boolean): DraftContent {
	const next = answered(draft, path, isTicked || undefined)
	return isTicked && path.endsWith('.guardian') ? withGuardian(next) : next
}
/** Who can be told and can answer: a guardian of a minor, or where one is named or noted. */
export function partiesFor(draft: DraftContent, minor: boolean): readonly Party[] {
	const { explainedTo, by } = agreementOf(draft)
	const isThere = minor || draft.visit.player.guardian || explainedTo?.guardian || by?.guardian
	return isThere ? parties : parties.filter((party) => party !== 'guardian')
}

/** Whether anything of the usual answers is noted; then they are not put over it. */
export function isBegun({ explainedTo, explained, answer, by }: Agreement): boolean {
	return [explainedTo, explained, answer, by].some((part) => part !== undefined)
}
/** The usual answers put together; the draft as it is where there are none. */
export function withUsual(draft: DraftContent, minor: boolean): DraftContent {
	const usual = usualAgreement(draft.visit.player, minor, agreementOf(draft))
	return usual ? decide(draft, { agreement: usual }) : draft
}
export const isMinorIn = ({ visit }: DraftContent, protocol: Protocol): boolean =>
	isMinor(visit, protocol)
/** Whether competence is asked: a minor decides without an adult, or against one. */
export const asksCompetence = (agreement: Agreement, minor: boolean): boolean =>
	minor && (decidesAlone(agreement) || agreement.playerDisagrees === true)
