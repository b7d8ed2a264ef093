/**
 * What the person sees when the screens stopped: plain words and a way back, without a script and
 * without a word of the records.
 */

export const crashPath = '/stopped'
/**
 * After so many stops within the time the shell closes instead of trying again; common practice, no
 * source.
 */
const often = { stops: 3, withinMs: 60_000 }
/**
 * @param earlier when the screens stopped before, in ms. @returns whether trying again is of no use
 */
export function stopsTooOften(earlier: readonly number[], nowMs: number): boolean {
	return earlier.filter((at) => nowMs - at < often.withinMs).length >= often.stops
}

/** Reasons as the runtime names them, said plainly. */
const reasons: Readonly<Record<string, string>> = {
	oom: 'There was not enough memory. Close other programs first.',
	killed: 'The system or another program ended them.',
	crashed: 'A fault in the program ended them.',
	'abnormal-exit': 'They ended in an unexpected way.',
	'launch-failed': 'They could not be started.',
	'integrity-failure':
		'The program files are not as they were installed. Install Lastwright again.',
	'memory-eviction': 'There was not enough memory. Close other programs first.',
}
export function reasonWords(reason: string): string {
	return Object.hasOwn(reasons, reason) ? (reasons[reason] ?? '') : 'The reason is not known.'
}

const styles = [
	':root{color-scheme:light dark}' +
		"body{font:1.125rem/1.55 'Noto Sans',sans-serif;max-width:36rem;margin:12vh auto;" +
		'padding:0 1.5rem;background:light-dark(#f6f1e7,#121d1f);color:light-dark(#17292b,#f1ede3)}',
	'h1{font-size:1.75rem}' +
		'a{display:inline-flex;align-items:center;min-height:44px;padding:0 1.25rem;' +
		'border-radius:6px;font-weight:600;text-decoration:none;' +
		'background:light-dark(#17524f,#8ad0c6);color:light-dark(#fffdf8,#0d2422)}' +
		'a:focus-visible{outline:3px solid light-dark(#b3500a,#ffc46b);outline-offset:2px}',
].join('\n')

/** @param reason the runtime's word, looked up and never shown itself */
export function crashPage(reason: string, nonce: string): string {
	return [
		'<!doctype html><html lang="en"><head><meta charset="utf-8">',
		`<title>Lastwright: the screens stopped</title><style nonce="${nonce}">\n${styles}\n</style>`,
		'</head><body><main><h1>The screens stopped</h1>',
		`<p role="alert">${reasonWords(reason)}</p>`,
		'<p>Your records are safe. Every entry is kept as a draft within a second, so at most the ',
		'last one has to be typed again.</p>',
		'<p><a href="/" autofocus>Open the screens again</a></p>',
		'<p>If it happens again, restart the PC. Nothing about your players was sent anywhere.</p>',
		'</main></body></html>',
	].join('')
}
