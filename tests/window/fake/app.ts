/** The program itself: its folders, its one start, its end. */
import { EventEmitter } from 'node:events'
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { connect, createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { App } from 'electron'
import { say } from './said.ts'

type Used = Pick<
	App,
	'enableSandbox' | 'exit' | 'getPath' | 'quit' | 'requestSingleInstanceLock' | 'setPath'
>
const isRunning = (pid: number): boolean => {
	try {
		return process.kill(pid, 0)
	} catch {
		return false
	}
}
class FakeApp extends EventEmitter implements Used {
	readonly #paths: Record<string, string> = { userData: join(tmpdir(), 'lastwright-fake') }
	readonly #ready = Promise.withResolvers<void>()
	/** Closes what is open, as the runtime does at its end. */
	closeWindows = (): void => {}
	/** A second start ends once the first has heard of it. */
	firstIsTold: Promise<void> = Promise.resolve()
	#isQuitting = false
	#isReady = false

	constructor() {
		super()
		setImmediate(() => {
			this.#isReady = true
			this.#ready.resolve()
		})
	}
	enableSandbox(): void {
		// the runtime takes it before it is ready, or not at all
		if (this.#isReady) throw new Error('app.enableSandbox() can only be called before app is ready')
		say('sandbox')
	}
	getPath(name: Parameters<App['getPath']>[0]): string {
		const path = this.#paths[name]
		if (path === undefined) throw new Error(`Failed to get '${name}' path`)
		return path
	}
	setPath(name: string, path: string): void {
		this.#paths[name] = path
	}
	whenReady(): Promise<void> {
		return this.#ready.promise
	}
	/** One lock for each folder of the runtime's own files: a second start is told to the first. */
	requestSingleInstanceLock(): boolean {
		const socket = join(this.getPath('userData'), 'fake.lock')
		const owner = `${socket}.pid`
		if (existsSync(owner) && isRunning(Number(readFileSync(owner, 'utf8')))) {
			this.firstIsTold = new Promise((resolve) => {
				const told = connect(socket, () => told.end('second'))
				told.on('close', () => resolve())
				told.on('error', () => resolve())
			})
			return false
		}
		rmSync(socket, { force: true })
		writeFileSync(owner, String(process.pid))
		const server = createServer((one) => {
			one.on('data', () => this.emit('second-instance', {}, [], ''))
		})
		server.listen(socket).unref()
		return true
	}
	quit(): void {
		if (this.#isQuitting) return
		this.#isQuitting = true
		say('quit')
		this.closeWindows()
		this.emit('will-quit', {})
	}
	/** At once, and nothing of the program is asked: the process would be gone. */
	exit(code = 0): void {
		say('exit', code)
		this.#isQuitting = true
	}
}
export const app = new FakeApp()
