/**
 * Writes what version 0.1.0 sees of the store of the first schema, which no released version wrote:
 * `node tests/compatibility/look-at-first-schema.ts CHECKOUT`. See the README.
 */
import { writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import ownTemporary from '../temporary.ts'
import { fixtures, type Manifest } from './manifest.ts'
import { seenBy, type Unseen } from './scenario/look.ts'
import { programAt } from './scenario/program.ts'

const lookedAt = '2026-11-26T10:00:00.000Z'
const fixture = join(fixtures, 'before-0.1.0')
const clearUp = ownTemporary()
const program = await programAt(resolve(process.argv[2] ?? '.'))
const store: Unseen = {
	name: 'the store of the first schema',
	from: 'home',
	kind: 'folder',
	passphrase: 'correct horse',
	recoveryKey: process.argv[3] ?? '',
}
const opening = await seenBy(program, fixture, lookedAt, store, [store.passphrase])
const manifest: Manifest = {
	version: 'before 0.1.0',
	commit: 'a store of the first schema, kept since before the first release',
	lookedAt,
	// bringing it up to date writes rows of its own at each opening
	openings: [{ ...opening, lastRow: 0, views: { ...opening.views, 'audit.page': [] } }],
	homecomings: [],
}
writeFileSync(join(fixture, 'manifest.json'), `${JSON.stringify(manifest)}\n`)
clearUp()
process.exit(0)
