/** Several things done in one step, each by the rules of one: what fails is about that one alone. */
import { setImmediate } from 'node:timers/promises'
import { WritesHeld } from '../../store/database.ts'
import { Said } from '../../store/said.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'

/** How one of them ended: what it gave, or why nothing came of it. */
export type Ended<Value> = { value: Value } | { says: string }

const takenOver = 'Another person took over before this one. Nothing was done with it.'
/** Why one was not done, in words; a fault of ours is about that one too. */
function saysOf(error: unknown): string {
	if (error instanceof Refusal) {
		const problems = (error.problems ?? []).map(({ path, message }) => `${path}: ${message}`)
		return [error.message, ...problems].join(' ')
	}
	if (error instanceof Said || error instanceof WritesHeld) return error.message
	return 'A fault kept this one from being done, and nothing of it was changed. Try it by itself.'
}
/**
 * Does one after the other, in order, while the person who began is at work; the host answers
 * others between two of them.
 * @returns how each ended, in the same order
 */
export async function eachInTurn<Thing, Value>(
	{ people }: Pick<Memory, 'people'>,
	things: readonly Thing[],
	work: (thing: Thing) => Value | Promise<Value>,
): Promise<Ended<Value>[]> {
	const person = people.acts()
	const ended: Ended<Value>[] = []
	for (const thing of things) {
		ended.push(await one(thing))
		await setImmediate()
	}
	return ended

	async function one(thing: Thing): Promise<Ended<Value>> {
		if (people.atWork !== person) return { says: takenOver }
		try {
			return { value: await work(thing) }
		} catch (error) {
			return { says: saysOf(error) }
		}
	}
}
