/** The list of changes (assets/changes.md) as data: releases, the groups in them, and their lines. */
export interface ChangeGroup {
	/** Empty where a release has no groups. */
	title: string
	items: string[]
}
export interface Release {
	title: string
	groups: ChangeGroup[]
}
/** Marks of code are for readers of the file; on the screen the words stand alone. */
const plainWords = (text: string): string => text.replaceAll('`', '')

/**
 * Reads headings of the second level as releases, of the third as groups, and the lines of lists.
 * What stands before the first release is for those who keep the file.
 */
export function releasesOf(markdown: string): Release[] {
	const releases: Release[] = []
	for (const line of markdown.split('\n')) {
		const [, mark, text = ''] = /^(##|###|-) (.+)$/.exec(line) ?? []
		const release = releases.at(-1)
		if (mark === '##') releases.push({ title: plainWords(text), groups: [] })
		else if (mark === '###') release?.groups.push({ title: plainWords(text), items: [] })
		else if (mark === '-' && release) {
			if (release.groups.length === 0) release.groups.push({ title: '', items: [] })
			release.groups.at(-1)?.items.push(plainWords(text))
		}
	}
	return releases
}
