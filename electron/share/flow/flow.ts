/**
 * Keeps a store and the server together for as long as it runs: what is written here is brought as soon
 * as it is written, what others write comes as soon as the server tells of it. Without the server
 * everything goes on here; it is tried again, less often the longer it is away.
 */
import type pg from 'pg'
import type { ShareMark } from '../../store/sharing.ts'
import { connect, type Wish } from '../connect.ts'
import { isCoded, refusedBy, ShareRefused } from '../faults.ts'
import { meet } from './meet.ts'
import { pull, type Taking } from './pull.ts'
import { push } from './push.ts'

/** Waits between tries, and how long another PC may keep this one waiting; choices of this program. */
export const usualTimes = { firstMs: 250, longestMs: 30_000, lookMs: 30_000, turnMs: 5_000 }

/** How it is between store and server. */
export interface FlowState {
	is: 'together' | 'away' | 'stopped'
	/** ISO 8601: since when */
	since: string
	/** why not together */
	refused?: ShareRefused
	/** whether the server had been put back to an older state and was brought what it lacked */
	isPutBack?: boolean
}
export interface FlowOptions extends Taking {
	wish: Wish
	/** players by the digest that the roll holds */
	players?: () => ReadonlyMap<string, string>
	now: () => Date
	tell?: (state: FlowState) => void
	times?: typeof usualTimes
}
/** A login that ended and a fault of ours end the flow; all else may mend while it waits. */
const mayMend = ({ kind }: ShareRefused): boolean => kind !== 'ended' && kind !== 'ours'

export class Flow {
	readonly #options: FlowOptions
	readonly #times: typeof usualTimes
	#client: pg.Client | undefined
	#wake: () => void = () => {}
	#isWoken = false
	#isStopped = false
	#state: FlowState
	#running: Promise<void> | undefined
	constructor(options: FlowOptions) {
		this.#options = options
		this.#times = options.times ?? usualTimes
		this.#state = { is: 'stopped', since: options.now().toISOString() }
	}
	get state(): FlowState {
		return this.#state
	}
	start(): void {
		this.#running ??= this.#run()
	}
	/** Something was written here: it goes at once. */
	wake(): void {
		this.#isWoken = true
		this.#wake()
	}
	/** Ends; what is under way is finished or undone, and goes on at the next start. */
	async stop(): Promise<void> {
		this.#isStopped = true
		this.wake()
		await this.#client?.end().catch(() => {})
		await this.#running
	}
	#is(is: FlowState['is'], more: Partial<FlowState> = {}): void {
		const since = this.#state.is === is ? this.#state.since : this.#options.now().toISOString()
		this.#state = { is, since, ...more }
		this.#options.tell?.(this.#state)
	}
	async #run(): Promise<void> {
		let waitMs = this.#times.firstMs
		while (!this.#isStopped) {
			try {
				await this.#together(() => {
					waitMs = this.#times.firstMs
				})
			} catch (error) {
				const refused = this.#refusalIn(error)
				if (!mayMend(refused)) {
					this.#is('stopped', { refused })
					return
				}
				if (!this.#isStopped) this.#is('away', { refused })
				await this.#pause(waitMs)
				waitMs = Math.min(waitMs * 2, this.#times.longestMs)
			}
		}
		this.#is('stopped')
	}
	/** A connection that broke while nothing was asked says no more than that. */
	#refusalIn(error: unknown): ShareRefused {
		if (isCoded(error)) return refusedBy(error)
		if (this.#client === undefined) return new ShareRefused('LW_SILENT', { cause: error })
		throw error
	}
	/** One connection, from its beginning to its end. */
	async #together(isWell: () => void): Promise<void> {
		const client = await connect(this.#options.wish)
		this.#client = client
		client.on('notification', () => this.wake())
		client.once('end', () => {
			this.#client = undefined
			this.wake()
		})
		try {
			await client.query(`SET lock_timeout = ${this.#times.turnMs}`)
			await client.query('LISTEN lastwright')
			const { mark, isPutBack } = await meet(client, this.#options.sharing)
			let at = mark
			while (!this.#isStopped && this.#client) {
				this.#isWoken = false
				at = await this.#once(client, at)
				this.#is('together', { isPutBack })
				isWell()
				if (!this.#isWoken) await this.#pause(this.#times.lookMs)
			}
			if (!this.#isStopped) throw new ShareRefused('LW_SILENT')
		} finally {
			await client.end().catch(() => {})
			this.#client = undefined
		}
	}
	async #once(client: pg.Client, from: ShareMark): Promise<ShareMark> {
		const { sharing, players = () => new Map<string, string>() } = this.#options
		// what is there is known before anything is brought
		const pulled = await pull(client, this.#options, from)
		return (await push(client, sharing, pulled.mark, players())).mark
	}
	/** Until it is woken, or so long. */
	#pause(ms: number): Promise<void> {
		if (this.#isStopped) return Promise.resolve()
		return new Promise((resolve) => {
			const end = () => {
				clearTimeout(timer)
				this.#wake = () => {}
				resolve()
			}
			const timer = setTimeout(end, ms)
			this.#wake = end
		})
	}
}
