/** Programs beside ours that read what we made; where one is not installed, the test says so. */
import { execFileSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'

export const isInstalled = (...programs: string[]): boolean =>
	programs.every((program) => {
		try {
			execFileSync('which', [program], { stdio: 'ignore' })
			return true
		} catch {
			return false
		}
	})

/** What Python's email package, in its newest policy, makes of a message. */
export interface ReadMessage {
	from: { name: string; address: string }[]
	to: { name: string; address: string }[]
	/** headers of further people that stand in it */
	others: string[]
	subject: string
	date: string
	messageId: string
	type: string
	parts: string[]
	body: string
	attachments: { name: string; type: string; disposition: string; sha256: string }[]
	/** the bytes of each attachment, in hexadecimal */
	files: string[]
	defects: string[]
}
const reader = fileURLToPath(new URL('./fixtures/mail/read.py', import.meta.url))
export const readByPython = (message: Uint8Array): ReadMessage =>
	JSON.parse(
		execFileSync('python3', ['-I', reader], {
			input: message,
			encoding: 'utf8',
			maxBuffer: 64_000_000,
		}),
	)
