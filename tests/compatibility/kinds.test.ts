/** A kind of record changes only together with the version of the program and a fixture of it. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { engineVersion } from '../../shared/engine/assess.ts'
import { kindVersions } from './kind-versions.ts'
import { readManifest, versionsKept } from './manifest.ts'

const root = join(import.meta.dirname, '../..')
const remedy =
	'Raise the version in package.json and make its fixture: node tests/compatibility/make.ts'

const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))

test('the program says the version that the package has', () => {
	expect(engineVersion).toBe(version)
})
test('the newest fixture is of this version, and its kinds are those of the ledger', async () => {
	const newest = versionsKept().at(-1)
	expect(newest, remedy).toBe(version)
	const { kinds } = readManifest(version)
	const now = await kindVersions(root)
	// before the ledger each kind had one version, the first
	const then = kinds ?? Object.fromEntries(Object.keys(now ?? {}).map((kind) => [kind, 1]))
	expect(now ?? {}, remedy).toEqual(then)
})
