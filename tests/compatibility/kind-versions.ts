/** The versions of the kinds of records that a checkout writes, by the ledger; 0.1.0 had none. */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'

const place = 'shared/desk/ledger/ledger.ts'
/** @returns undefined where the checkout has no ledger: each of its kinds is version 1 */
export async function kindVersions(root: string): Promise<Record<string, number> | undefined> {
	const file = join(root, place)
	if (!existsSync(file)) return undefined
	const { ledger } = (await import(pathToFileURL(file).href)) as {
		ledger: ReadonlyMap<string, { version: number }>
	}
	return Object.fromEntries([...ledger].map(([name, { version }]) => [name, version]))
}
