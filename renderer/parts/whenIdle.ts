/** Work for a moment at which nothing else is done. WebKit tells of no such moment. */
export function whenIdle(work: () => void, withinMs: number): void {
	if (typeof globalThis.requestIdleCallback === 'function')
		requestIdleCallback(work, { timeout: withinMs })
	else setTimeout(work, withinMs)
}
