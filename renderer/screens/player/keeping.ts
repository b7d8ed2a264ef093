/**
 * What is typed into a player's details goes to the host at once, which keeps it sealed until it is
 * saved: in order, one call at a time, the last words of each form. What the host refused waits here
 * until its form is opened again.
 */
import { call, wordsOf } from '../../host.ts'
import type { Form } from './details.ts'

/** A form: whose words, and about which player; undefined for a new one. */
export interface FormOf {
	personId: string | undefined
	playerId: string | undefined
}
interface Job extends FormOf {
	typed: Form
	/** how it went: nothing, or why it is not kept */
	told: (says: string) => void
}
const keyOf = ({ personId = '', playerId = 'new' }: FormOf): string => `${personId} ${playerId}`
const waiting = new Map<string, Job>()
const refused = new Map<string, Job>()
let running: Promise<void> | undefined

async function keepAll(): Promise<void> {
	for (const [key, job] of waiting) {
		waiting.delete(key)
		const { playerId, typed, told } = job
		try {
			await call('players.keepTyped', { playerId, typed })
			refused.delete(key)
			told('')
		} catch (error) {
			refused.set(key, job)
			told(wordsOf(error))
		}
	}
}
function begin(): void {
	running ??= keepAll().finally(() => {
		running = undefined
		if (waiting.size > 0) begin()
	})
}
export function keepTyped(job: Job): void {
	waiting.set(keyOf(job), job)
	begin()
}
/** Waits until the host has answered for all that was typed. */
export async function allKept(): Promise<void> {
	while (running) await running
}
/** Whether the host has all that was typed. */
export const isAllKept = (): boolean => !running && refused.size === 0

/** What was typed into a form and not saved; none where all is. */
export async function typedBefore(form: FormOf): Promise<{ typed?: Form; at?: string }> {
	await allKept()
	const lost = refused.get(keyOf(form))
	if (lost) {
		keepTyped({ ...lost, told: () => {} })
		await allKept()
	}
	const { typed, at } = await call('players.typed', { playerId: form.playerId })
	return { ...(typed && { typed }), ...(at !== undefined && { at }) }
}
