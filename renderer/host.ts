/** The only door to the host: the Electron preload where present, else the loopback address. */
import type { Answer, CallName, InputOf, OutputOf } from '../shared/contract.ts'
import type { Purpose } from '../shared/desk/places/purposes.table.ts'
import type { Printed } from '../shared/desk/workplace/printed.ts'
import type { RefusalCode } from '../shared/desk/workplace/refusal.ts'

declare global {
	interface Window {
		lastwright?: {
			call(name: string, input: unknown): Promise<Answer<unknown>>
			/** prints a PDF through the desktop window */
			print(base64: string): Promise<Printed>
			/** opens the system's own dialog; without a path where nothing was chosen */
			choose(purpose: Purpose): Promise<Answer<{ path?: string }>>
		}
	}
}
type Problem = { path: string; message: string }
/** A refusal in words for the person. */
export class HostRefusal extends Error {
	/** why, to go by; 'unreachable' where the host did not answer */
	readonly code: RefusalCode | 'unreachable'
	readonly problems: Problem[]
	constructor(code: RefusalCode | 'unreachable', message: string, problems: Problem[] = []) {
		super(message)
		this.code = code
		this.problems = problems
	}
}
async function overHttp(name: string, input: unknown): Promise<Answer<unknown>> {
	const reply = await fetch(`/call/${name}`, {
		method: 'POST',
		headers: { 'content-type': 'application/json' },
		body: JSON.stringify(input),
	})
	return (await reply.json()) as Answer<unknown>
}
/**
 * Makes one call of the contract. @throws HostRefusal with the host's words, or where it cannot be
 * reached.
 */
export async function call<N extends CallName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> {
	let answer: Answer<unknown>
	try {
		answer = await (window.lastwright ? window.lastwright.call(name, input) : overHttp(name, input))
	} catch {
		throw new HostRefusal(
			'unreachable',
			'The workstation did not answer. Check that it is still running, then try again.',
		)
	}
	if (!answer.ok) throw new HostRefusal(answer.code, answer.message, answer.problems)
	return answer.value as OutputOf<N>
}
/** Tells the host something as the page goes: no answer is waited for. */
export function tell<N extends CallName>(name: N, input: InputOf<N>): void {
	const told = window.lastwright
		? window.lastwright.call(name, input)
		: fetch(`/call/${name}`, {
				method: 'POST',
				headers: { 'content-type': 'application/json' },
				body: JSON.stringify(input),
				keepalive: true,
			})
	told.catch(() => {})
}
/** Whether a folder or file is chosen in a dialog of the system. */
export const choosesNatively = (): boolean => window.lastwright !== undefined
/** @returns the path; undefined where nothing was chosen. @throws HostRefusal */
export async function chooseNatively(purpose: Purpose): Promise<string | undefined> {
	const answer = await window.lastwright?.choose(purpose)
	if (answer?.ok === false) throw new HostRefusal(answer.code, answer.message, answer.problems)
	return answer?.value.path
}
/** The sentences of a failure, the problems named after it. */
export function wordsOf(error: unknown): string {
	if (error instanceof HostRefusal)
		return [
			error.message,
			...error.problems.map((problem) => `${problem.path}: ${problem.message}`),
		].join(' ')
	return error instanceof Error ? error.message : String(error)
}
