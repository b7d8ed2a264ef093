/** Asks the calls of the screens, by whoever is at work. */
import type { CallName, InputOf, OutputOf } from '../../../shared/contract.ts'
import type { App } from '../../app.ts'

export type Ask = <Name extends CallName>(
	name: Name,
	input: InputOf<Name>,
) => Promise<OutputOf<Name>>

/** @throws Error naming the call that refused, with its problems */
export const asking =
	(app: App): Ask =>
	async (name, input) => {
		const answer = await app.call(name, input)
		if (answer.ok) return answer.value as OutputOf<typeof name>
		const problems = (answer.problems ?? []).map(({ path, message }) => `${path}: ${message}`)
		throw new Error(`demo: ${name} refused: ${answer.message} ${problems.join('; ')}`)
	}
/** Does something as another person of the clinic, and gives the place back. */
export async function actingAs<Done>(
	ask: Ask,
	passphrases: { other: string; back: string },
	doing: () => Promise<Done>,
): Promise<Done> {
	await ask('session.lock', {})
	await ask('session.unlock', { passphrase: passphrases.other })
	const done = await doing()
	await ask('session.lock', {})
	await ask('session.unlock', { passphrase: passphrases.back })
	return done
}
