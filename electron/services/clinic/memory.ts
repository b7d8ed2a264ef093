/** What is remembered of the clinic: letterhead, settings of the records, protocol. */
import {
	defaultRecordSettings,
	type RecordSettings,
	recordSettingsSchema,
} from '../../../shared/desk/records/settings.ts'
import {
	openProtocol,
	type ProtocolFile,
	shippedProtocol,
} from '../../../shared/engine/protocol/protocol.ts'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import { Refusal } from '../records/refusal.ts'
import type { Remembered } from '../records/remember.ts'
import { logoTrouble } from './logo.ts'
import { type ProtocolRecord, protocolRecordSchema } from './protocol-record.ts'

/** A version of the protocol with the record that holds it. */
export type ProtocolVersion = ProtocolRecord & { savedAs: string }

export class ClinicMemory {
	/** undefined before the clinic is set up */
	letterhead: Clinic | undefined
	settings: RecordSettings = defaultRecordSettings
	/** the thresholds in force */
	protocol: ProtocolFile = shippedProtocol
	/** every version there was, in order of saving */
	protocolVersions: readonly ProtocolVersion[] = []
	/** the record that holds each; what is saved next follows it */
	recordIds: { letterhead?: string; settings?: string; protocol?: string } = {}

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
			throw new Refusal('The clinic is not set up. Fill in the letterhead first.')
		return this.letterhead
	}
	takeLetterhead({ id, value }: Remembered): void {
		this.letterhead = value as Clinic
		this.recordIds.letterhead = id
	}
	takeSettings({ id, value }: Remembered, warn: (says: string) => void): void {
		const read = recordSettingsSchema.safeParse(value)
		if (read.success) this.settings = read.data
		else
			warn(
				'The settings of the records cannot be read. The usual ones are used: open Settings of ' +
					'the records and save them again.',
			)
		this.recordIds.settings = id
	}
	takeProtocol({ id, value }: Remembered, warn: (says: string) => void): void {
		const read = protocolRecordSchema.safeParse(value)
		try {
			if (!read.success) throw new RangeError('not a protocol')
			openProtocol(read.data.file)
			this.protocol = read.data.file
			this.protocolVersions = [...this.protocolVersions, { ...read.data, savedAs: id }]
		} catch {
			warn(
				'The newest protocol cannot be read. The one before it is used, or the shipped values: ' +
					'open Settings, Protocol and save it again.',
			)
		}
		this.recordIds.protocol = id
	}
	clear(): void {
		this.letterhead = undefined
		this.settings = defaultRecordSettings
		this.protocol = shippedProtocol
		this.protocolVersions = []
		this.recordIds = {}
	}
}
