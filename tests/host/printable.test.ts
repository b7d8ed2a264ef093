/** What can be printed: the one table equals the fonts, and a Latin spelling stands on the page. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Font, openSync } from 'fontkit'
import { expect, test } from 'vitest'
import { fontFiles } from '../../electron/pdf/fonts.ts'
import { renderPdf } from '../../electron/pdf/render.ts'
import { assess } from '../../shared/engine/assess.ts'
import { isPrintable } from '../../shared/engine/plain/printable.ts'
import { playerReport } from '../../shared/engine/report/player.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { clinic, json, read } from '../demo.ts'
import { pagesOf, wordsOf } from './read-pages.ts'

const main = fileURLToPath(new URL('../../electron/command/main.ts', import.meta.url))
const names = {
	hebrew: { givenName: 'נועה', familyName: 'לוי' },
	arabic: { givenName: 'نور', familyName: 'حداد' },
	japanese: { givenName: 'さくら', familyName: '田中' },
	latin: { givenName: 'Noor', familyName: 'Tanaka-Levi' },
}
const file = json('visit-adult.json')
const visitOf = (player: object) => ({ ...file, player: { ...file.player, ...player } })
function pageOf(player: object) {
	const visit = read(visitOf(player))
	return playerReport({
		visit,
		assessment: assess(visit),
		decisions: noDecisions,
		clinic,
		draft: true,
		signedAt: undefined,
	})
}
test('every code point that the fonts of the pages have is printable, and no other', () => {
	const fonts = [fontFiles.normal, fontFiles.bold].map((path) => openSync(path) as Font)
	const other: number[] = []
	for (let code = 0; code <= 0x10ffff; code++) {
		const isDrawn = code === 0x0a || fonts.every((font) => font.hasGlyphForCodePoint(code))
		if (isPrintable(code) !== isDrawn) other.push(code)
	}
	expect(other.slice(0, 20)).toEqual([])
})
test.each(['hebrew', 'arabic', 'japanese'] as const)(
	'a name in %s letters is printed in Latin letters, and not drawn without',
	async (script) => {
		const bytes = await renderPdf(pageOf({ ...names[script], latinName: names.latin }))
		const text = wordsOf(await pagesOf(bytes))
		expect(text).toContain('Noor Tanaka-Levi')
		expect(text).not.toContain(names[script].familyName)
		await expect(renderPdf(pageOf(names[script]))).rejects.toThrow(/cannot be printed/)
	},
)
test.each([
	['Vietnamese', { givenName: 'Hồng Ánh', familyName: 'Nguyễn' }],
	['Greek', { givenName: 'Ελένη', familyName: 'Παπαδοπούλου' }],
	['Cyrillic', { givenName: 'Светлана', familyName: 'Ковалёва' }],
	['combining marks', { givenName: 'Sin̄a', familyName: 'Òlu̱wa' }],
])('a name with %s is printed as it is written', async (_, name) => {
	const text = wordsOf(await pagesOf(await renderPdf(pageOf(name))))
	expect(text.normalize('NFC')).toContain(`${name.givenName} ${name.familyName}`.normalize('NFC'))
})
test('the command line names the names and what helps', () => {
	const folder = mkdtempSync(join(tmpdir(), 'lastwright-names-'))
	const from = join(folder, 'visit.json')
	writeFileSync(from, JSON.stringify(visitOf(names.hebrew)))
	const run = () =>
		execFileSync(
			process.execPath,
			['--disable-warning=ExperimentalWarning', main, 'report', from].concat([
				'--kind',
				'player',
				'--out',
				join(folder, 'r.pdf'),
			]),
			{ encoding: 'utf8', stdio: 'pipe' },
		)
	expect(run).toThrow(
		expect.objectContaining({
			status: 2,
			stderr: expect.stringMatching(
				/^player\.givenName: no font .*\(Hebrew\).*latinName.*\nplayer\.familyName: .*\n$/,
			),
		}),
	)
	writeFileSync(from, JSON.stringify(visitOf({ ...names.hebrew, latinName: names.latin })))
	expect(run()).toBe('')
	rmSync(folder, { recursive: true, force: true })
})
