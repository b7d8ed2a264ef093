/** Which name a new folder may have: one that every system takes and that leads nowhere else. */

/** Longest name in characters; shorter than any file system asks. A choice of this program. */
const longest = 80
/** Names Windows keeps for devices, from memory. */
const device = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is refused
const hidden = /[\u0000-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/
const forbidden = /[\\/:*?"<>|]/
/** A letter pair of UTF-16 that lost its partner: no file system keeps it as it is. */
const half = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/

type Fault = readonly [fails: (name: string) => boolean, says: (name: string) => string]
const faults: readonly Fault[] = [
	[(name) => name === '', () => 'is empty. Write a name.'],
	[
		(name) => name.length > longest,
		(name) => `has ${name.length} characters. Shorten it to ${longest} or fewer.`,
	],
	[
		(name) => hidden.test(name) || half.test(name),
		() => 'holds a sign that cannot be seen. Type it anew.',
	],
	[
		(name) => forbidden.test(name),
		(name) => `holds ${forbidden.exec(name)?.[0] ?? ''}. Leave out \\ / : * ? " < > and |.`,
	],
	[(name) => name.startsWith('.'), () => 'begins with a dot. Begin it with a letter or a number.'],
	[(name) => name.endsWith('.'), () => 'ends with a dot. Leave it out.'],
	[(name) => device.test(name), () => 'is kept by Windows for a device. Choose another.'],
]
/**
 * @returns the name without spaces at its ends, or a sentence that says what is wrong with it
 */
export function checkFolderName(typed: string): { name: string } | { says: string } {
	const name = typed.trim()
	const fault = faults.find(([fails]) => fails(name))
	if (!fault) return { name }
	const shown = name === '' || hidden.test(name) ? '' : ` ${name.slice(0, 40)}`
	return { says: `The name of the folder${shown} ${fault[1](name)}` }
}
