/**
 * What was found amiss with the records, sealed, until the owner has looked into it: said once, it
 * is said again at each unlock.
 */
import { z } from 'zod'
import type { Keyring } from './keyring.ts'

const setting = 'alarms'
const alarmsSchema = z.array(z.object({ at: z.string(), says: z.string() }))
export type Alarm = z.infer<typeof alarmsSchema>[number]
/** So many are kept; the first ones tell most. */
const mostAlarms = 100

export class Alarms {
	readonly #keyring: Keyring
	constructor(keyring: Keyring) {
		this.#keyring = keyring
	}
	/** Those that nobody has looked into yet. */
	open(): Alarm[] {
		const bytes = this.#keyring.sealedSetting(setting)
		return bytes ? alarmsSchema.parse(JSON.parse(Buffer.from(bytes).toString('utf8'))) : []
	}
	/** Adds what is new. @returns whether anything was. */
	add(at: string, says: readonly string[]): boolean {
		const before = this.open()
		const known = new Set(before.map((alarm) => alarm.says))
		const fresh = says.filter((one) => !known.has(one)).map((one) => ({ at, says: one }))
		if (fresh.length === 0) return false
		this.#put([...before, ...fresh].slice(0, mostAlarms))
		return true
	}
	clear(): void {
		this.#put([])
	}
	#put(alarms: readonly Alarm[]): void {
		this.#keyring.putSealedSetting(setting, Buffer.from(JSON.stringify(alarms), 'utf8'))
	}
}
