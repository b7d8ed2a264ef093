/**
 * What was found amiss with the records, sealed, until the owner has looked into it: said once, it
 * is said again at each unlock.
 */
import { z } from 'zod'
import type { Keyring } from './keyring.ts'

const setting = 'alarms'
const alarmsSchema = z.array(
	z.object({ at: z.string(), says: z.string(), of: z.string().optional() }),
)
export type Alarm = z.infer<typeof alarmsSchema>[number]
/**
 * What was found, in words. The work that goes on makes the same cut read otherwise the next time:
 * `of` tells what was held against what, so that it is said once.
 */
export type Finding = Pick<Alarm, 'says' | 'of'>
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
	/** Those of the findings that are not known yet. */
	fresh(findings: readonly Finding[]): Finding[] {
		const open = this.open()
		const said = new Set(open.map(({ says }) => says))
		const about = new Set(open.flatMap(({ of }) => of ?? []))
		return findings.filter(({ says, of }) => !said.has(says) && !(of && about.has(of)))
	}
	/** Adds what is new. */
	add(at: string, findings: readonly Finding[]): void {
		const fresh = this.fresh(findings)
		if (fresh.length === 0) return
		const put = fresh.map((one) => ({ at, ...one }))
		this.#put([...this.open(), ...put].slice(0, mostAlarms))
	}
	clear(): void {
		this.#put([])
	}
	#put(alarms: readonly Alarm[]): void {
		this.#keyring.putSealedSetting(setting, Buffer.from(JSON.stringify(alarms), 'utf8'))
	}
}
