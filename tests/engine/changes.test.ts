import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { releasesOf } from '../../renderer/parts/help/changes.ts'

it('reads releases, groups and lines, and leaves out what stands before', () => {
	const text = '# Changes\n\nFor us.\n\n## 2\n\n### Changed\n- A `word`.\n- B.\n\n## 1\n\n- C.\n'
	expect(releasesOf(text)).toEqual([
		{ title: '2', groups: [{ title: 'Changed', items: ['A word.', 'B.'] }] },
		{ title: '1', groups: [{ title: '', items: ['C.'] }] },
	])
})
it('loses no line of the list that is shipped', () => {
	const markdown = readFileSync(new URL('../../assets/changes.md', import.meta.url), 'utf8')
	const releases = releasesOf(markdown)
	const items = releases.flatMap(({ groups }) => groups.flatMap((group) => group.items))
	expect(items).toHaveLength(markdown.split('\n').filter((line) => line.startsWith('- ')).length)
	expect(releases.map(({ title }) => title)).toContain('0.1.0')
	for (const { groups } of releases) expect(groups.length).toBeGreaterThan(0)
})
