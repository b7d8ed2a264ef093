/**
 * The demo's records: filled once, copied afterwards, and filled again where the copy is not what
 * it should be.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { openDemo } from '../../electron/command/demo-records.ts'

const kept = fileURLToPath(new URL('../../build/demo/', import.meta.url))
async function opened(
	day: string,
): Promise<{ cards: { familyName: string; birthDate: string }[] }> {
	const folder = mkdtempSync(join(tmpdir(), 'lastwright-demo-'))
	const app = await openDemo(folder, day, () => {})
	try {
		const answer = await app.call('players.search', { query: '', limit: 50 })
		if (!answer.ok) throw new Error(answer.message)
		return answer.value as { cards: { familyName: string; birthDate: string }[] }
	} finally {
		app.close()
		rmSync(folder, { recursive: true, force: true })
	}
}
const names = (list: { cards: { familyName: string; birthDate: string }[] }) =>
	list.cards.map((one) => `${one.familyName} ${one.birthDate}`)
test(
	'the same players from a filled folder, from its copy, and after the copy was spoilt or ' +
		'another day began',
	async () => {
		rmSync(kept, { recursive: true, force: true })
		const filled = await opened('day one')
		expect(filled.cards).toHaveLength(12)
		const copied = await opened('day one')
		expect(names(copied)).toEqual(names(filled))
		writeFileSync(join(kept, 'records/lastwright.db'), 'no records at all')
		expect(names(await opened('day one'))).toEqual(names(filled))
		expect(names(await opened('day two'))).toEqual(names(filled))
	},
)
