/**
 * `npm run check`: what must hold before every commit. Each step says in one line how it went, and a
 * failed one shows what it printed at the end. One after another: the tests and the compiler use
 * both processors by themselves, and side by side they took a third longer.
 */
import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

interface Step {
	name: string
	/** A program of node_modules, by its file. */
	program: string
	arguments: readonly string[]
}
interface Outcome {
	step: Step
	passed: boolean
	seconds: number
	printed: string
}

const root = fileURLToPath(new URL('..', import.meta.url))
const compiler = 'typescript-native/bin/tsc'
const types = (project: string): Step => ({
	name: `types of ${project}`,
	program: compiler,
	arguments: ['-p', project],
})
const steps: readonly Step[] = [
	{
		name: 'unit and published tests',
		program: 'vitest/vitest.mjs',
		arguments: ['run', '--project', 'unit', '--reporter=agent'],
	},
	{
		name: 'form and lint',
		program: '@biomejs/biome/bin/biome',
		arguments: ['check', '--error-on-warnings', '.'],
	},
	types('tests'),
	types('renderer'),
	types('electron'),
	types('shared'),
	{
		name: 'boundaries',
		program: 'dependency-cruiser/bin/dependency-cruiser.mjs',
		arguments: ['--config', '.dependency-cruiser.cjs', 'shared', 'electron', 'renderer'],
	},
	{
		name: 'unused code',
		program: 'knip/bin/knip.js',
		arguments: ['--config', '.knip.json', '--no-progress'],
	},
	{
		name: 'unused code of the program itself',
		program: 'knip/bin/knip.js',
		arguments: ['--config', '.knip.json', '--no-progress', '--production'],
	},
]

function run(step: Step): Promise<Outcome> {
	const began = performance.now()
	const child = spawn(
		process.execPath,
		[join(root, 'node_modules', step.program), ...step.arguments],
		{ cwd: root, stdio: ['ignore', 'pipe', 'pipe'] },
	)
	let printed = ''
	const keep = (chunk: Buffer) => {
		printed += chunk.toString()
	}
	child.stdout.on('data', keep)
	child.stderr.on('data', keep)
	return new Promise((resolve) => {
		const end = (passed: boolean) =>
			resolve({ step, passed, seconds: (performance.now() - began) / 1000, printed })
		child.once('error', (error) => {
			printed += error.message
			end(false)
		})
		child.once('close', (code) => end(code === 0))
	})
}

const failed: Outcome[] = []
for (const step of steps) {
	const outcome = await run(step)
	const verdict = outcome.passed ? 'ok' : 'FAILED'
	process.stdout.write(`check: ${step.name}: ${verdict}, ${outcome.seconds.toFixed(0)} s\n`)
	if (!outcome.passed) failed.push(outcome)
}
for (const { step, printed } of failed)
	process.stdout.write(
		`\n--- ${step.name} (${step.program} ${step.arguments.join(' ')})\n${printed}\n`,
	)
process.exitCode = failed.length > 0 ? 1 : 0
