/**
 * The boundaries hold by tool, and the tool is tested: each forbidden import is planted in a copy
 * and must be named.
 */
import { spawnSync } from 'node:child_process'
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
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

/** A file with one import of a name, from the path given. */
const importing = (path: string) => `import { thing } from '${path}'\nexport const used = thing\n`
const thing = 'export const thing = 1\n'

/** Lays the files out in a copy of the house. @returns what the tool prints of them */
function cruise(files: Record<string, string>): string {
	for (const part of ['shared', 'electron', 'renderer']) {
		rmSync(join(folder, part), { recursive: true, force: true })
		mkdirSync(join(folder, part))
		writeFileSync(join(folder, part, 'empty.ts'), 'export {}\n')
	}
	for (const [name, text] of Object.entries(files)) {
		mkdirSync(dirname(join(folder, name)), { recursive: true })
		writeFileSync(join(folder, name), text)
	}
	const tool = join(root, 'node_modules/dependency-cruiser/bin/dependency-cruiser.mjs')
	const places = ['shared', 'electron', 'renderer']
	const done = spawnSync(
		process.execPath,
		[
			tool,
			'--no-progress',
			'--config',
			'.dependency-cruiser.cjs',
			'--output-type',
			'err',
			...places,
		],
		{ cwd: folder, encoding: 'utf8', env: { ...process.env, NO_COLOR: '1', FORCE_COLOR: '0' } },
	)
	return `${done.stdout}${done.stderr}`
}

/** What everyone may import: the targets of the planted files. */
const innocent = {
	'shared/contract.ts': thing,
	'shared/desk/squad/desk.ts': thing,
	'shared/engine/asked/asked.ts': thing,
	'shared/engine/findings/finding.ts': thing,
	'shared/engine/report/report.ts': thing,
	'shared/engine/sizing/sizing.ts': thing,
	'shared/engine/words/words.ts': thing,
	'electron/services/outbox/outbox.ts': thing,
	'renderer/screens/feet/feet.ts': thing,
	'renderer/parts/part.ts': thing,
}
/** Each rule with a file that breaks it. One file may break one rule only. */
const planted: readonly (readonly [rule: string, file: string, text: string])[] = [
	['shared-is-pure', 'shared/engine/ankle/reads.ts', importing('node:fs')],
	[
		'shared-is-pure',
		'shared/engine/ankle/calls.ts',
		importing('../../../electron/services/outbox/outbox.ts'),
	],
	['screens-know-no-host', 'renderer/host.ts', importing('../electron/services/outbox/outbox.ts')],
	['screens-no-node', 'renderer/reads.ts', importing('fs')],
	['host-knows-no-screen', 'electron/app.ts', importing('../renderer/parts/part.ts')],
	['rooms-meet-in-the-spine', 'shared/engine/ankle/neighbour.ts', importing('../sizing/sizing.ts')],
	['asked-above-the-rooms', 'shared/engine/ankle/asks.ts', importing('../asked/asked.ts')],
	['engine-knows-no-desk', 'shared/engine/ankle/desk.ts', importing('../../desk/squad/desk.ts')],
	['desk-knows-no-contract', 'shared/desk/outbox/calls.ts', importing('../../contract.ts')],
	['files-stand-in-rooms', 'shared/engine/loose.ts', importing('./sizing/sizing.ts')],
	['files-stand-in-rooms', 'shared/desk/loose.ts', importing('./squad/desk.ts')],
	['files-stand-in-rooms', 'electron/services/loose.ts', importing('./outbox/outbox.ts')],
	['files-stand-in-rooms', 'renderer/screens/loose.ts', importing('./feet/feet.ts')],
	[
		'condition-tables-below-everything',
		'shared/engine/conditions/regions/hand.table.ts',
		importing('../../sizing/sizing.ts'),
	],
	['schema-below-everything', 'shared/engine/visit/visit.ts', importing('../words/words.ts')],
	[
		'protocol-above-the-schema-only',
		'shared/engine/protocol/row.ts',
		importing('../findings/finding.ts'),
	],
	['words-above-the-schema-only', 'shared/engine/words/speak.ts', importing('../report/report.ts')],
	['charts-below-report', 'shared/engine/charts/chart.ts', importing('../report/report.ts')],
	['parts-know-no-screen', 'renderer/parts/Field.ts', importing('../screens/feet/feet.ts')],
	['only-the-shell-knows-electron', 'electron/services/people/shell.ts', importing('electron')],
	['no-circles', 'shared/engine/growth/first.ts', importing('./second.ts')],
	['not-unresolvable', 'shared/engine/growth/lost.ts', importing('./gone.ts')],
]

describe('the import rule', () => {
	it('accepts the one-way street', () =>
		expect(
			cruise({
				...innocent,
				'shared/engine/conditions/registry.ts': thing,
				'shared/engine/visit/terms.ts': importing('../conditions/registry.ts'),
				'shared/engine/ankle/ankle.ts':
					"import { z } from 'zod'\nexport const thing = z.number()\n",
				'electron/app.ts':
					"import { readFileSync } from 'node:fs'\n" +
					"import { thing } from '../shared/engine/ankle/ankle.ts'\n" +
					'export const used = [thing, readFileSync]\n',
			}),
		).toContain('no dependency violations'))
	describe('names each break', () => {
		let told = ''
		beforeAll(() => {
			told = cruise({
				...innocent,
				...Object.fromEntries(planted.map(([, file, text]) => [file, text])),
				'shared/engine/growth/second.ts':
					"import { used } from './first.ts'\nexport const thing = () => used\n",
			})
		})
		it.each(planted)('%s in %s', (rule, file) =>
			expect(told.split('\n').filter((line) => line.includes(`${rule}: ${file}`))).not.toEqual([]),
		)
		it('every rule of the configuration has a planted break', () => {
			const { forbidden } = createRequire(import.meta.url)('../../.dependency-cruiser.cjs')
			const rules: string[] = forbidden.map((rule: { name: string }) => rule.name)
			expect([...new Set(planted.map(([rule]) => rule))].sort()).toEqual(rules.sort())
		})
	})
})

describe('the types of the engine', () => {
	const strangers = [
		'process.exit()',
		'document.title',
		'setTimeout(() => {}, 1)',
		'localStorage.clear()',
	]
	let told = ''
	beforeAll(() => {
		const pure = join(folder, 'pure')
		mkdirSync(pure, { recursive: true })
		writeFileSync(join(pure, 'package.json'), JSON.stringify({ type: 'module' }))
		for (const [at, expression] of strangers.entries())
			writeFileSync(join(pure, `stranger-${at}.ts`), `export const use = () => { ${expression} }\n`)
		writeFileSync(
			join(pure, 'tsconfig.json'),
			JSON.stringify({ extends: join(root, 'shared/tsconfig.json'), include: ['*.ts'] }),
		)
		const compiler = join(root, 'node_modules/typescript-native/bin/tsc')
		const done = spawnSync(process.execPath, [compiler, '-p', 'pure'], {
			cwd: folder,
			encoding: 'utf8',
		})
		expect(done.status).not.toBe(0)
		told = done.stdout
	})
	it.each(strangers)('know nothing of %s', (expression) => {
		const file = `stranger-${strangers.indexOf(expression)}.ts`
		const faults = told.split('\n').filter((line) => line.includes(file))
		expect(faults).toEqual([expect.stringMatching(/Cannot find name/)])
	})
})
