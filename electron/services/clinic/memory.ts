/** What is remembered of the clinic: letterhead, settings of the records, protocol. */
import type { ValueOf } from '../../../shared/desk/ledger/ledger.ts'
import { inOrder } from '../../../shared/desk/outreach/carried.ts'
import {
	defaultRecordSettings,
	type RecordSettings,
} from '../../../shared/desk/records/settings.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { type ProtocolFile, shippedProtocol } from '../../../shared/engine/protocol/protocol.ts'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import { Latest, type Taken } from '../records/newest.ts'
import { Refusal } from '../records/refusal.ts'
import { logoTrouble } from './logo.ts'

type ProtocolValue = ValueOf<'protocol'>
/** A version of the protocol with the record that holds it. */
export type ProtocolVersion = ProtocolValue & { savedAs: string }

export class ClinicMemory {
	readonly #letterhead = new Latest<Clinic>()
	readonly #settings = new Latest<RecordSettings>()
	#protocols: Taken<ProtocolValue>[] = []

	/** Undefined before the clinic is set up. */
	get letterhead(): Clinic | undefined {
		return this.#letterhead.value
	}
	get settings(): RecordSettings {
		return this.#settings.value ?? defaultRecordSettings
	}
	/** The thresholds in force. */
	get protocol(): ProtocolFile {
		return this.#protocols.at(-1)?.value.file ?? shippedProtocol
	}
	/** Every version there was, in order of saving. */
	get protocolVersions(): readonly ProtocolVersion[] {
		return this.#protocols.map(({ id, value }) => ({ ...value, savedAs: id }))
	}
	/** The record that holds each; what is saved next follows it. */
	get recordIds(): { letterhead?: string; settings?: string; protocol?: string } {
		return present({
			letterhead: this.#letterhead.recordId,
			settings: this.#settings.recordId,
			protocol: this.#protocols.at(-1)?.id,
		})
	}

	/** the logo that was last looked at, and what is wrong with it */
	#looked: { logo?: Clinic['logo']; says?: string | undefined } = {}

	/** What a person has to mend in the letterhead, in words. */
	notices(): string[] {
		const logo = this.letterhead?.logo
		if (logo !== this.#looked.logo) this.#looked = { logo, says: logoTrouble(logo) }
		return this.#looked.says === undefined ? [] : [this.#looked.says]
	}
	/** @throws Refusal where the clinic is not set up */
	needLetterhead(): Clinic {
		if (!this.letterhead)
			throw new Refusal(
				'clinic.not-set-up',
				'The clinic is not set up. Fill in the letterhead first.',
			)
		return this.letterhead
	}
	takeLetterhead(taken: Taken<Clinic>): void {
		this.#letterhead.take(taken)
	}
	takeSettings(taken: Taken<RecordSettings>): void {
		this.#settings.take(taken)
	}
	takeProtocol(taken: Taken<ProtocolValue>): void {
		this.#protocols = [...this.#protocols.filter(({ id }) => id !== taken.id), taken].sort(inOrder)
	}
	forget(records: ReadonlySet<string>): void {
		this.#letterhead.forget(records)
		this.#settings.forget(records)
		this.#protocols = this.#protocols.filter(({ id }) => !records.has(id))
	}
	clear(): void {
		this.#letterhead.clear()
		this.#settings.clear()
		this.#protocols = []
	}
}
