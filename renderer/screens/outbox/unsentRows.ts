/** What of the visits that nobody was given anything of is put into the outbox. Pure. */
import { channelWords, kindWords, roleWords } from '../../../shared/desk/outbox/item.ts'
import type { Offer, PutRow, UnsentVisit } from '../../../shared/desk/outbox/many.ts'

/** A page that could go to somebody, as it stands on the screen. */
export interface Row extends PutRow {
	isOn: boolean
}
/** What was changed by hand, by visit; a visit that is not named stands as proposed. */
export type Changed = Readonly<Record<string, readonly Row[]>>

export const offerOf = (visit: UnsentVisit, row: Row): Offer | undefined =>
	visit.offers.find(
		({ kind, recipient }) => kind === row.kind && recipient.recipientId === row.recipientId,
	)
/** Why a row cannot go as it stands; undefined where it can. */
export const cannotGo = (visit: UnsentVisit, row: Row): string | undefined =>
	offerOf(visit, row)?.cannot[row.channel]

const rowOf = ({ visitId }: UnsentVisit, { kind, recipient, channel, cannot }: Offer): Row => ({
	visitId,
	kind,
	recipientId: recipient.recipientId,
	channel,
	isOn: cannot[channel] === undefined,
})
/** The rows of a visit: those proposed, unless they were changed. */
export const rowsOf = (visit: UnsentVisit, changed: Changed): readonly Row[] =>
	changed[visit.visitId] ??
	visit.offers.filter(({ isProposed }) => isProposed).map((offer) => rowOf(visit, offer))

/** One more page of a visit: the first that no row is about yet; undefined where there is none. */
export function oneMore(visit: UnsentVisit, rows: readonly Row[]): Row | undefined {
	const free = visit.offers.find(
		({ kind, recipient }) =>
			!rows.some((row) => row.kind === kind && row.recipientId === recipient.recipientId),
	)
	return free && { ...rowOf(visit, free), isOn: false }
}
/** The row after another recipient was chosen: with a page and a way that this one may have. */
export function withRecipient(visit: UnsentVisit, row: Row, recipientId: string): Row {
	const own = visit.offers.filter(({ recipient }) => recipient.recipientId === recipientId)
	const offer =
		own.find(({ kind }) => kind === row.kind) ?? own.find((one) => one.isProposed) ?? own[0]
	return offer ? rowOf(visit, offer) : row
}
export const withWay = (visit: UnsentVisit, row: Row, channel: Row['channel']): Row => {
	const next = { ...row, channel }
	return { ...next, isOn: cannotGo(visit, next) === undefined }
}
/** Whom and what it is about, as it is ticked. */
export function rowWords(visit: UnsentVisit, row: Row): string {
	const recipient = offerOf(visit, row)?.recipient
	const to = recipient ? `${recipient.name} (${roleWords[recipient.role]})` : ''
	return `${kindWords[row.kind]} to ${to}, ${channelWords[row.channel].toLowerCase()}`
}
/** Days of signing, newest first, each with its visits. */
export function byDay(visits: readonly UnsentVisit[]): [day: string, visits: UnsentVisit[]][] {
	const days = new Map<string, UnsentVisit[]>()
	for (const visit of visits) days.set(visit.signedOn, [...(days.get(visit.signedOn) ?? []), visit])
	return [...days].sort(([left], [right]) => (left < right ? 1 : -1))
}
/** Those that are ticked and can go. */
export const toBePut = (visits: readonly UnsentVisit[], changed: Changed) =>
	visits.flatMap((visit) =>
		rowsOf(visit, changed)
			.filter((row) => row.isOn && cannotGo(visit, row) === undefined)
			.map((row) => ({ visit, row })),
	)
