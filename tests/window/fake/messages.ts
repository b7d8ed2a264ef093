/** The channels between page and shell. */
import type { IpcMain, IpcMainInvokeEvent } from 'electron'

type Handler = Parameters<IpcMain['handle']>[1]
const handlers = new Map<string, Handler>()
export const ipcMain: Pick<IpcMain, 'handle'> = {
	handle(channel, handler) {
		if (handlers.has(channel)) throw new Error(`A second handler for '${channel}'`)
		handlers.set(channel, handler)
	},
}
/** A frame as the shell is told of it; null once it is gone. */
export type Sender = { url: string; parent: unknown } | null
/** @param sender the frame that calls; what crosses is cloned, as between processes */
export async function invoke(sender: Sender, channel: string, given: unknown[]): Promise<unknown> {
	const handler = handlers.get(channel)
	if (!handler) throw new Error(`No handler registered for '${channel}'`)
	const event = { senderFrame: sender } as unknown as IpcMainInvokeEvent
	return structuredClone(await handler(event, ...structuredClone(given)))
}
