/** The clinic's own error of a forecast as values of its protocol, and the way back. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { errorKeys } from '../../../shared/desk/clinic-audit/account.ts'
import { dayInWords } from '../../../shared/engine/plain/days.ts'
import type { ProtocolFile } from '../../../shared/engine/protocol/protocol.ts'
import { saveProtocol } from '../clinic/protocol.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import type { AuditNeeds } from './counting.ts'
import { shownOf } from './reading.ts'

/** @throws Refusal where there are too few forecasts, or other figures than were looked at */
export async function adoptError(
	memory: AuditNeeds,
	deps: Deps,
	{ band, ...period }: InputOf<'clinicAudit.adopt'>,
): Promise<OutputOf<'clinicAudit.adopt'>> {
	const { audit } = await shownOf(memory, deps, period)
	const { forecasts, least, band: own } = audit.account.own
	if (!own || forecasts === undefined)
		throw new Refusal(
			'audit.too-few',
			`The clinic can take its own error from ${least} forecasts on: there are fewer on these ` +
				'days. Nothing was changed.',
		)
	if (own.low !== band.low || own.high !== band.high)
		throw new Refusal(
			'audit.other-figures',
			'The figures are others now than those on the page. Open the page again. Nothing was changed.',
		)
	const counted = { forecasts, from: period.from, to: period.to }
	const days = `${dayInWords(period.from)} to ${dayInWords(period.to)}`
	save(memory, deps, {
		values: { ...memory.clinic.protocol.values, [errorKeys[0]]: own.low, [errorKeys[1]]: own.high },
		counted: Object.fromEntries(errorKeys.map((key) => [key, counted])),
		why: `Own error of the foot forecast, ${forecasts} forecasts, ${days}`,
	})
	return {}
}
const isTaken = ({ counted }: ProtocolFile): boolean =>
	errorKeys.some((key) => counted?.[key] !== undefined)

/** @throws Refusal where the band in force was not taken from the clinic's forecasts */
export function setBack(memory: AuditNeeds, deps: Deps): OutputOf<'clinicAudit.setBack'> {
	const { clinic } = memory
	if (!isTaken(clinic.protocol))
		throw new Refusal(
			'audit.not-taken',
			"The band in force is not of the clinic's own forecasts. Nothing was changed.",
		)
	const before = clinic.protocolVersions.findLast(({ file }) => !isTaken(file))?.file.values ?? {}
	const now = Object.entries(clinic.protocol.values ?? {})
	const others = now.filter(([key]) => !(errorKeys as readonly string[]).includes(key))
	const own = errorKeys.flatMap((key) => {
		const value = before[key]
		return value === undefined ? [] : [[key, value] as const]
	})
	save(memory, deps, {
		values: Object.fromEntries([...others, ...own]),
		counted: {},
		why: 'Band of the foot forecast set back to what it was before',
	})
	return {}
}
function save(
	memory: AuditNeeds,
	deps: Deps,
	given: Pick<Parameters<typeof saveProtocol>[2], 'values' | 'counted' | 'why'>,
): void {
	const { fpiScheme } = memory.clinic.protocol
	const follows = memory.clinic.recordIds.protocol
	saveProtocol(memory, deps, {
		...given,
		...(fpiScheme && { fpiScheme }),
		...(follows !== undefined && { follows }),
	})
}
