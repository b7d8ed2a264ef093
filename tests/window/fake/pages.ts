/** Where pages come from and what they may: one for each partition. */
import { EventEmitter } from 'node:events'
import type { Protocol, Session, WebRequest } from 'electron'
import { say } from './said.ts'

const privileged: string[] = []
/** Schemes are registered before they are handled, as the runtime wants it. */
export const protocol: Pick<Protocol, 'registerSchemesAsPrivileged'> = {
	registerSchemesAsPrivileged(schemes) {
		for (const { scheme, privileges } of schemes) {
			privileged.push(scheme)
			say('scheme', { scheme, ...privileges })
		}
	},
}
type Handler = Parameters<Protocol['handle']>[1]
type Before = Extract<Parameters<WebRequest['onBeforeRequest']>[0], (...given: never[]) => void>
type Used = Pick<
	Session,
	'setDevicePermissionHandler' | 'setPermissionCheckHandler' | 'setPermissionRequestHandler'
>
export class FakeSession extends EventEmitter implements Used {
	#handler: Handler | undefined
	#before: Before | undefined
	#asks: Parameters<Session['setPermissionRequestHandler']>[0] = null
	#has: Parameters<Session['setPermissionCheckHandler']>[0] = null

	readonly protocol: Pick<Protocol, 'handle'> = {
		handle: (scheme, handler) => {
			if (!privileged.includes(scheme)) throw new Error(`${scheme} is not registered`)
			this.#handler = handler
		},
	}
	readonly webRequest = {
		onBeforeRequest: (before: Before) => {
			this.#before = before
		},
	}
	setPermissionRequestHandler(asks: Parameters<Session['setPermissionRequestHandler']>[0]): void {
		this.#asks = asks
	}
	setPermissionCheckHandler(has: Parameters<Session['setPermissionCheckHandler']>[0]): void {
		this.#has = has
	}
	setDevicePermissionHandler(has: Parameters<Session['setDevicePermissionHandler']>[0]): void {
		say('device', has?.({ deviceType: 'hid', origin: 'app://lastwright', device: {} as never }))
	}
	/** Without a handler the runtime lets everything through. */
	async mayFetch(url: string): Promise<boolean> {
		const before = this.#before
		if (!before) return true
		const { cancel } = await new Promise<{ cancel?: boolean }>((resolve) =>
			before({ url } as Parameters<Before>[0], resolve),
		)
		return cancel !== true
	}
	/** Whether a page has a permission without asking. */
	has(name: string, origin: string): boolean {
		return this.#has?.(null, name as 'media', origin, {} as never) ?? true
	}
	/** Whether a page gets a permission that it asks for. */
	gets(name: string, origin: string): boolean {
		let gets = this.#asks === null
		this.#asks?.(
			{} as never,
			name as 'media',
			(given) => {
				gets = given
			},
			{ requestingUrl: `${origin}/`, isMainFrame: true } as never,
		)
		return gets
	}
	/** @returns nothing where no handler was set */
	async answer(url: string, method: string): Promise<Response | undefined> {
		return this.#handler?.(new Request(url, { method }))
	}
}
const sessions = new Map<string, FakeSession>()
export const session = {
	fromPartition(name: string): FakeSession {
		const found = sessions.get(name) ?? new FakeSession()
		sessions.set(name, found)
		return found
	},
}
