/** What is remembered of the audit: the counts that were made last, nothing of a player. */
import type { Audit } from '../../../shared/desk/clinic-audit/audit.ts'

/** Counts, and of how many visits nothing could be read. */
export interface Made {
	/** days, protocol and day of making */
	key: string
	audit: Audit
	unread: number
}
export class ClinicAuditMemory {
	/** of the days that were asked for last: what is printed is what was shown */
	shown: Made | undefined
	/** of all days, for who reads a forecast; made once a day */
	all: Promise<Made> | undefined
	allKey = ''

	/** Whatever is gone is counted no more. */
	forget(records: ReadonlySet<string>): void {
		if (records.size > 0) this.clear()
	}
	clear(): void {
		this.shown = undefined
		this.all = undefined
		this.allKey = ''
	}
}
