/** A later version of the program, in a process of its own. */
import { fork } from 'node:child_process'
import { once } from 'node:events'
import { fileURLToPath } from 'node:url'
import type { Answer } from '../../../shared/contract.ts'

const here = (file: string) => fileURLToPath(new URL(file, import.meta.url))

/** @returns the calls of the later version, and its end */
export async function laterVersion(folder: string, at: string) {
	const child = fork(here('./later-job.ts'), [folder, at], {
		execArgv: ['--disable-warning=ExperimentalWarning', '--import', here('./later-words.ts')],
	})
	const [{ ready }] = await once(child, 'message')
	if (ready !== 'Reworded: Where this comes from') throw new Error(`not reworded: ${ready}`)
	const waiting = new Map<number, (answer: Answer<unknown>) => void>()
	child.on('message', ({ id, answer }: { id: number; answer: Answer<unknown> }) =>
		waiting.get(id)?.(answer),
	)
	// biome-ignore lint/suspicious/noExplicitAny: answers are looked at field by field
	const ask = async (name: string, input: unknown = {}): Promise<any> => {
		const id = waiting.size
		const answer = await new Promise<Answer<unknown>>((resolve) => {
			waiting.set(id, resolve)
			child.send({ id, name, input })
		})
		if (!answer.ok) throw new Error(`${name}: ${answer.message}`)
		return answer.value
	}
	const close = async () => {
		child.disconnect()
		if (child.exitCode === null) await once(child, 'exit')
	}
	return { ask, close }
}
