/**
 * The printed recovery key: 160 random bits, base32 in groups, eight letters and a check letter to
 * a group.
 */
import { createHash } from 'node:crypto'

// No I, L, O, U: letters that are misread on paper.
const alphabet = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'
const bytesLong = 20
const groupLong = 8

function check(letters: string, group: number): string {
	return alphabet[(createHash('sha256').update(`${group}:${letters}`).digest()[0] ?? 0) & 31] ?? ''
}

/** Prints 20 bytes as four groups; 32 letters carry the bits, each group adds a check letter. */
export function printRecoveryKey(key: Uint8Array): string {
	if (key.length !== bytesLong)
		throw new RangeError(`recovery key: ${key.length} bytes given, allowed: ${bytesLong}`)
	let bits = ''
	for (const byte of key) bits += byte.toString(2).padStart(8, '0')
	const letters = (bits.match(/.{5}/g) ?? [])
		.map((five) => alphabet[Number.parseInt(five, 2)])
		.join('')
	return (letters.match(/.{1,8}/g) ?? [])
		.map((group, index) => group + check(group, index))
		.join('-')
}
/** Reads a typed recovery key. @throws RangeError that names the group with the typing error. */
export function readRecoveryKey(typed: string): Uint8Array {
	const plain = typed.toUpperCase().replace(/[\s-]/g, '').replace(/O/g, '0').replace(/[IL]/g, '1')
	const groups = plain.match(/.{1,9}/g) ?? []
	if (plain.length !== 36)
		throw new RangeError(
			`The recovery key has 36 letters and digits in four groups of nine; ${plain.length} were ` +
				'given. Type it again from the printed page.',
		)
	let bits = ''
	groups.forEach((group, index) => {
		const letters = group.slice(0, groupLong)
		if (
			[...group].some((letter) => !alphabet.includes(letter)) ||
			check(letters, index) !== group.slice(groupLong)
		)
			throw new RangeError(
				`Group ${index + 1} of the recovery key has a typing error. Compare it with the printed ` +
					'page.',
			)
		for (const letter of letters) bits += alphabet.indexOf(letter).toString(2).padStart(5, '0')
	})
	return Uint8Array.from((bits.match(/.{8}/g) ?? []).map((eight) => Number.parseInt(eight, 2)))
}
