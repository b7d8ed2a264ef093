/** The shell with one line made wrong, again and again: which check notices. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { mutants } from '../window/fake/mutants.table.ts'
import { runShell } from '../window/fake/run.ts'

interface Tried {
	mutant: string
	/** The check that noticed; empty where none did. */
	noticed: string
	/** Why none had to. */
	unseen: string
}
async function tried({ checks, unseen = '', ...mutant }: (typeof mutants)[number]): Promise<Tried> {
	const data = mkdtempSync(join(tmpdir(), 'lastwright-mutant-'))
	try {
		const told = await runShell(data, checks, mutant)
		const noticed = told.find(({ fault }) => fault !== '')?.name ?? ''
		return { mutant: `${mutant.file}: ${mutant.from} > ${mutant.to}`, noticed, unseen }
	} finally {
		rmSync(data, { recursive: true, force: true })
	}
}
/** @returns a fault where none noticed and none had to, or one did that was said not to */
export async function shellMutants(
	only: number | undefined,
	tell: (text: string) => void,
): Promise<{ faults: string[]; tried: Tried[] }> {
	const all: Tried[] = []
	for (const [at, row] of mutants.entries()) {
		if (only !== undefined && only !== at) continue
		const one = await tried(row)
		tell(`${at} ${one.noticed ? `noticed by “${one.noticed}”` : 'not noticed'}: ${one.mutant}`)
		all.push(one)
	}
	const wrong = all.filter(({ noticed, unseen }) => (noticed === '') !== (unseen !== ''))
	return { faults: wrong.map(({ mutant }) => mutant), tried: all }
}
