/** A passphrase that is easy to guess is refused here, whatever the screen said of it. */
import type { Weakness } from '../../../shared/desk/people/strength.ts'
import { Refusal } from '../records/refusal.ts'

/** The word lists are fetched when the first passphrase is chosen. */
export async function weakness(
	passphrase: string,
	names: readonly string[],
): Promise<Weakness | undefined> {
	const { weaknessOf } = await import('../../../shared/desk/people/strength.ts')
	return weaknessOf(passphrase, names)
}
/**
 * @param path of the passphrase among the entries
 * @param names that count as guessable: `namesToGuess`
 * @throws Refusal saying why it is weak and what helps
 */
export async function refuseWeak(
	passphrase: string,
	path: string,
	names: readonly string[],
): Promise<void> {
	const weak = await weakness(passphrase, names)
	if (weak)
		throw new Refusal(
			'people.easy-passphrase',
			'This passphrase is easy to guess. Nothing was changed.',
			[{ path, message: `${weak.why}. ${weak.helps}` }],
		)
}
