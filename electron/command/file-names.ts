/** Names for files that are made of others. */
import { basename, extname } from 'node:path'

/**
 * A name for each file, that of its own without folder and ending: nothing of what the page says.
 * Names that are alike are told apart by a number. `-` is `standard-input`.
 */
export function namesOfFiles(files: readonly string[]): string[] {
	const taken = new Set<string>()
	return files.map((file) => {
		const own = file === '-' ? 'standard-input' : basename(file, extname(file))
		let name = own
		// a disk may tell no large letters from small ones
		for (let times = 2; taken.has(name.toLowerCase()); times++) name = `${own}-${times}`
		taken.add(name.toLowerCase())
		return name
	})
}
