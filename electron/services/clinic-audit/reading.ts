/** What became of visits, for screen, paper and spreadsheet: the same counts for all three. */
import Papa from 'papaparse'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { errorKeys } from '../../../shared/desk/clinic-audit/account.ts'
import { auditDocument, auditLines } from '../../../shared/desk/clinic-audit/document.ts'
import { wrongWords } from '../../../shared/desk/clinic-audit/forecasts-in-words.ts'
import type { Period } from '../../../shared/desk/clinic-audit/seen.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { addYears } from '../../../shared/engine/plain/days.ts'
import { openProtocol } from '../../../shared/engine/protocol/protocol.ts'
import { speakOf } from '../../../shared/engine/report/base.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { draw, pdfOf } from '../visits/drawing.ts'
import { type AuditNeeds, askingOf, count, forecastsOnly } from './counting.ts'
import type { Made } from './memory.ts'

function keyOf({ clinic }: AuditNeeds, deps: Deps, { from, to }: Period): string {
	return [from, to, clinic.recordIds.protocol ?? '', dayHere(deps.now())].join(' ')
}
/** @throws Refusal where the days are turned round */
function needPeriod({ from, to }: Period): void {
	if (from > to)
		throw new Refusal('audit.days', 'These days cannot be counted. Nothing was changed.', [
			{ path: 'to', message: `given ${to}, allowed: ${from}, the first day, or a later one` },
		])
}
async function make(memory: AuditNeeds, deps: Deps, period: Period): Promise<Made> {
	needPeriod(period)
	const made = {
		key: keyOf(memory, deps, period),
		...(await count(memory, deps, askingOf(memory, deps, period))),
	}
	memory.clinicAudit.shown = made
	return made
}
/** What was shown, where it was of the same days; else counted now. */
export async function shownOf(memory: AuditNeeds, deps: Deps, period: Period): Promise<Made> {
	const { shown } = memory.clinicAudit
	return shown?.key === keyOf(memory, deps, period) ? shown : make(memory, deps, period)
}
const frameOf = ({ clinic }: AuditNeeds, deps: Deps) => ({
	clinic: clinic.needLetterhead(),
	protocol: openProtocol(clinic.protocol),
	on: dayHere(deps.now()),
})
const fileName = ({ from, to }: Period, ending: string): string => `audit-${from}-${to}.${ending}`

/** So many years are counted at first: a choice of this program. */
const yearsAtFirst = 2
function daysAtFirst({ now }: Pick<Deps, 'now'>): Period {
	const to = dayHere(now())
	return { from: addYears(to, -yearsAtFirst), to }
}
export async function readAudit(
	memory: AuditNeeds,
	deps: Deps,
	{ days }: InputOf<'clinicAudit.read'>,
): Promise<OutputOf<'clinicAudit.read'>> {
	const period = days ?? daysAtFirst(deps)
	const frame = frameOf(memory, deps)
	const { audit, unread } = await make(memory, deps, period)
	const [low, high] = errorKeys
	const { forecasts, least, band } = audit.account.own
	const { counted } = memory.clinic.protocol
	return {
		days: period,
		document: auditDocument(audit, frame),
		own: {
			...(forecasts !== undefined && { forecasts }),
			least,
			...(band && { band }),
			inForce: { low: frame.protocol.value(low), high: frame.protocol.value(high) },
			isTaken: errorKeys.some((key) => counted?.[key] !== undefined),
		},
		unread,
	}
}
export async function printAudit(
	memory: AuditNeeds,
	deps: Deps,
	period: InputOf<'clinicAudit.print'>,
): Promise<OutputOf<'clinicAudit.print'>> {
	const frame = frameOf(memory, deps)
	const { audit } = await shownOf(memory, deps, period)
	return { pdf: pdfOf(await draw(deps, auditDocument(audit, frame)), fileName(period, 'pdf')) }
}
/** RFC 4180 text: CRLF lines, a byte order mark; a cell that would run as a formula is marked as text. */
export async function exportAudit(
	memory: AuditNeeds,
	deps: Deps,
	period: InputOf<'clinicAudit.export'>,
): Promise<OutputOf<'clinicAudit.export'>> {
	const frame = frameOf(memory, deps)
	const { audit } = await shownOf(memory, deps, period)
	const lines = Papa.unparse(auditLines(audit, frame), { newline: '\r\n', escapeFormulae: true })
	return { csv: `\uFEFF${lines}\r\n`, fileName: fileName(period, 'csv') }
}
/** So many years of forecasts are looked at: a choice of this program. */
const yearsOfForecasts = 5
/** Bands that were wrong too often here, for who reads a forecast; counted once a day. */
export async function forecastSays(
	memory: AuditNeeds,
	deps: Deps,
): Promise<OutputOf<'clinicAudit.forecast'>> {
	const { clinic, clinicAudit } = memory
	const today = dayHere(deps.now())
	const period = { from: addYears(today, -yearsOfForecasts), to: today }
	const key = keyOf(memory, deps, period)
	if (clinicAudit.allKey !== key) {
		clinicAudit.allKey = key
		const asking = askingOf(memory, deps, period)
		const made = count(memory, deps, asking, forecastsOnly(asking))
		clinicAudit.all = made.then((counts) => ({ key, ...counts }))
	}
	try {
		const made = await clinicAudit.all
		const t = speakOf(clinic.needLetterhead())
		return { says: made ? wrongWords(made.audit, openProtocol(clinic.protocol), t) : [] }
	} catch (error) {
		clinicAudit.clear()
		throw error
	}
}
