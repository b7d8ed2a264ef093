/** The files that people keep beside the records: visit, assessment, plan, shelf and protocol. */
import { execFileSync } from 'node:child_process'
import { copyFileSync, mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Program } from './program.ts'

const copied = ['visit-adolescent', 'visit-adult', 'season-visit', 'shelf', 'clinic'] as const
const protocol = {
	format: 'lastwright-protocol',
	version: 1,
	id: 'clinic',
	revision: 3,
	values: { 'season.trainingMinutes': 80 },
}
/** Made through the command line of the checkout. */
export function makeFiles({ root }: Program, folder: string): void {
	mkdirSync(folder, { recursive: true })
	for (const name of copied)
		copyFileSync(join(root, `assets/demo/${name}.json`), join(folder, `${name}.json`))
	writeFileSync(join(folder, 'protocol.json'), `${JSON.stringify(protocol, null, '\t')}\n`)
	const run = (...given: string[]): Buffer =>
		execFileSync(
			process.execPath,
			['--disable-warning=ExperimentalWarning', join(root, 'electron/command/main.ts'), ...given],
			{ cwd: folder, maxBuffer: 64_000_000 },
		)
	const given = ['visit-adult.json', '--protocol', 'protocol.json']
	writeFileSync(join(folder, 'assessment.json'), run('assess', ...given))
	const plan = ['season-visit.json', '--out', 'plan.json', '--ics', 'plan.ics']
	run('plan', ...plan, '--time-limit', '20', '--zone', 'Australia/Melbourne')
}
