/**
 * The boundaries hold by tool, and the tool is tested: each forbidden import is planted in a copy
 * and must be named.
 */
import { spawnSync } from 'node:child_process'
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))
let folder = ''
beforeAll(() => {
	folder = mkdtempSync(join(tmpdir(), 'lastwright-bounds-'))
	copyFileSync(join(root, '.dependency-cruiser.cjs'), join(folder, '.dependency-cruiser.cjs'))
	symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

function plant(files: Record<string, string>): string {
	for (const part of ['shared', 'electron', 'renderer']) {
		rmSync(join(folder, part), { recursive: true, force: true })
		mkdirSync(join(folder, part))
		writeFileSync(join(folder, part, 'empty.ts'), 'export {}\n')
	}
	for (const [name, text] of Object.entries(files)) {
		mkdirSync(dirname(join(folder, name)), { recursive: true })
		writeFileSync(join(folder, name), text)
	}
	const done = spawnSync(
		process.execPath,
		[
			join(root, 'node_modules/dependency-cruiser/bin/dependency-cruiser.mjs'),
			'--config',
			'.dependency-cruiser.cjs',
			'shared',
			'electron',
			'renderer',
		],
		{ cwd: folder, encoding: 'utf8' },
	)
	return `${done.stdout}${done.stderr}`
}

describe('the import rule', () => {
	it('accepts the one-way street', () =>
		expect(
			plant({
				'shared/engine/ankle/a.ts': "import { z } from 'zod'\nexport const a = z.number()\n",
				'electron/b.ts':
					"import { a } from '../shared/engine/ankle/a.ts'\nimport { readFileSync } from 'node:fs'\nexport " +
					'const b = [a, readFileSync]\n',
			}),
		).toContain('no dependency violations'))
	it.each([
		[
			'shared-is-pure',
			{ 'shared/a.ts': "import { readFileSync } from 'node:fs'\nexport const a = readFileSync\n" },
		],
		[
			'shared-is-pure',
			{
				'shared/a.ts': "import type { B } from '../electron/b.ts'\nexport type A = B\n",
				'electron/b.ts': 'export type B = 1\n',
			},
		],
		[
			'screens-know-no-host',
			{
				'renderer/a.ts': "import { b } from '../electron/b.ts'\nexport const a = b\n",
				'electron/b.ts': 'export const b = 1\n',
			},
		],
		[
			'host-knows-no-screen',
			{
				'electron/b.ts': "import { a } from '../renderer/a.ts'\nexport const b = a\n",
				'renderer/a.ts': 'export const a = 1\n',
			},
		],
		[
			'rooms-meet-in-the-spine',
			{
				'shared/engine/ankle/a.ts': "import { s } from '../sizing/s.ts'\nexport const a = s\n",
				'shared/engine/sizing/s.ts': 'export const s = 1\n',
			},
		],
		[
			'engine-knows-no-desk',
			{
				'shared/engine/ankle/a.ts':
					"import { d } from '../../desk/squad/d.ts'\nexport const a = d\n",
				'shared/desk/squad/d.ts': 'export const d = 1\n',
			},
		],
		[
			'desk-knows-no-contract',
			{
				'shared/desk/squad/d.ts': "import { c } from '../../contract.ts'\nexport const d = c\n",
				'shared/contract.ts': 'export const c = 1\n',
			},
		],
		[
			'files-stand-in-rooms',
			{
				'shared/engine/loose.ts': "import { a } from './ankle/a.ts'\nexport const b = a\n",
				'shared/engine/ankle/a.ts': 'export const a = 1\n',
			},
		],
		[
			'files-stand-in-rooms',
			{
				'electron/services/loose.ts': "import { a } from './outbox/a.ts'\nexport const b = a\n",
				'electron/services/outbox/a.ts': 'export const a = 1\n',
			},
		],
		[
			'schema-below-everything',
			{
				'shared/engine/visit/v.ts': "import { w } from '../words/w.ts'\nexport const v = w\n",
				'shared/engine/words/w.ts': 'export const w = 1\n',
			},
		],
		[
			'protocol-above-the-schema-only',
			{
				'shared/engine/protocol/p.ts': "import { f } from '../findings/f.ts'\nexport const p = f\n",
				'shared/engine/findings/f.ts': 'export const f = 1\n',
			},
		],
		[
			'words-above-the-schema-only',
			{
				'shared/engine/words/w.ts': "import { r } from '../report/r.ts'\nexport const w = r\n",
				'shared/engine/report/r.ts': 'export const r = 1\n',
			},
		],
		[
			'charts-below-report',
			{
				'shared/engine/charts/c.ts': "import { r } from '../report/r.ts'\nexport const c = r\n",
				'shared/engine/report/r.ts': 'export const r = 1\n',
			},
		],
		[
			'parts-know-no-screen',
			{
				'renderer/parts/p.ts': "import { s } from '../screens/feet/s.ts'\nexport const p = s\n",
				'renderer/screens/feet/s.ts': 'export const s = 1\n',
			},
		],
		[
			'screens-no-node',
			{ 'renderer/a.ts': "import { readFileSync } from 'fs'\nexport const a = readFileSync\n" },
		],
		[
			'no-circles',
			{
				'shared/engine/ankle/a.ts': "import { b } from './b.ts'\nexport const a = () => b\n",
				'shared/engine/ankle/b.ts': "import { a } from './a.ts'\nexport const b = () => a\n",
			},
		],
		[
			'not-unresolvable',
			{ 'shared/engine/ankle/a.ts': "import { b } from './gone.ts'\nexport const a = b\n" },
		],
		[
			'only-the-shell-knows-electron',
			{ 'electron/services/a.ts': "import { app } from 'electron'\nexport const a = app\n" },
		],
	])('%s is named', (rule, files) =>
		expect(plant(files as unknown as Record<string, string>)).toContain(rule),
	)
})

describe('the types of the engine', () => {
	it.each(['process.exit()', 'document.title', 'setTimeout(() => {}, 1)', 'localStorage.clear()'])(
		'know nothing of %s',
		(expression) => {
			mkdirSync(join(folder, 'pure'), { recursive: true })
			writeFileSync(join(folder, 'pure/a.ts'), `export const a = () => { ${expression} }\n`)
			writeFileSync(
				join(folder, 'pure/tsconfig.json'),
				JSON.stringify({ extends: join(root, 'shared/tsconfig.json'), include: ['a.ts'] }),
			)
			const done = spawnSync(
				process.execPath,
				[join(root, 'node_modules/typescript-native/bin/tsc'), '-p', 'pure'],
				{ cwd: folder, encoding: 'utf8' },
			)
			expect(done.status).not.toBe(0)
			expect(done.stdout).toMatch(/Cannot find name/)
		},
	)
})
