/** The demo's host as a process of its own that can be replaced while the screens stay open. */
import { type ChildProcess, fork } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import type { Answer } from '../../../shared/contract.ts'
import type { HostAnswer } from './messages.ts'

const program = fileURLToPath(new URL('./demo-host.ts', import.meta.url))
const stopped: Answer<unknown> = {
	ok: false,
	code: 'call.something-in-the-way',
	message: 'The host stopped. It starts again when one of its files is saved.',
}

export class RestartingHost {
	readonly #folder: string
	readonly #tell: (text: string) => void
	#child: ChildProcess | undefined
	#ready: Promise<boolean> = Promise.resolve(false)
	#waiting = new Map<number, (result: Answer<unknown>) => void>()
	#calls = 0
	/** A restart that comes while another runs waits for it. */
	#turn: Promise<void> = Promise.resolve()

	/** @param folder the throw-away folder of the demo's records @param tell where it says what it does */
	constructor(folder: string, tell: (text: string) => void) {
		this.#folder = folder
		this.#tell = tell
	}
	/** Ends the host that runs, if any, and starts the code as it is now. */
	restart(): Promise<void> {
		this.#turn = this.#turn.then(async () => {
			await this.stop()
			this.#start()
			if (await this.#ready) this.#tell('the host is up.')
		})
		return this.#turn
	}
	/** Answers once the host is up; where it cannot start, the answer says so. */
	async call(name: string, input: unknown): Promise<Answer<unknown>> {
		await this.#turn
		const child = this.#child
		if (!(await this.#ready) || !child?.connected) return stopped
		const id = this.#calls++
		return new Promise((resolve) => {
			this.#waiting.set(id, resolve)
			child.send({ id, name, input })
		})
	}
	async stop(): Promise<void> {
		const child = this.#child
		if (!child || child.exitCode !== null || child.signalCode !== null) return
		const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()))
		child.kill('SIGTERM')
		await ended
	}
	#start(): void {
		const child = fork(program, [this.#folder], {
			execArgv: ['--disable-warning=ExperimentalWarning'],
		})
		this.#child = child
		this.#ready = new Promise((resolve) => {
			child.on('message', (message: HostAnswer) => {
				if ('ready' in message) return resolve(true)
				this.#waiting.get(message.id)?.(message.result)
				this.#waiting.delete(message.id)
			})
			child.once('exit', () => {
				resolve(false)
				for (const answer of this.#waiting.values()) answer(stopped)
				this.#waiting.clear()
			})
		})
	}
}
