/**
 * The whole main job in a network namespace that has nothing but loopback. Where that cannot be
 * made, the test says why it was skipped.
 */
import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'

const script = fileURLToPath(new URL('./fixtures/main-job.ts', import.meta.url))
/**
 * Each takes the network away in its own way: as root, or as an ordinary user who may have a
 * namespace of their own.
 */
const waysIn: Record<string, string[]> = { 'as root': ['-n'], 'as a user': ['-r', '-n'] }
const inNamespace = (flags: string[], command: string) =>
	spawnSync('unshare', [...flags, 'sh', '-c', `ip link set lo up && ${command}`], {
		encoding: 'utf8',
	})
function why(): string {
	if (process.platform !== 'linux')
		return `network namespaces are Linux's; this is ${process.platform}`
	return Object.entries(waysIn)
		.map(([way, flags]) => {
			const tried = inNamespace(flags, 'true')
			return (
				`${way}: ` +
				`${(tried.error?.message ?? tried.stderr).trim() || `ended with ${tried.status}`}`
			)
		})
		.join('; ')
}
const flags =
	process.platform === 'linux'
		? Object.values(waysIn).find((way) => inNamespace(way, 'true').status === 0)
		: undefined
const reason = flags ? '' : why()
if (!flags)
	console.warn(
		'tests/host/offline.test.ts is SKIPPED: the work without a network was not tested here. ' +
			`${reason}`,
	)

test.skipIf(!flags)(
	'set up, consent, draft, sign, report, pack, away, home and print with no ' +
		`network${flags ? '' : ` (skipped: ${reason})`}`,
	() => {
		const ran = inNamespace(
			flags ?? [],
			`exec '${process.execPath}' --disable-warning=ExperimentalWarning '${script}'`,
		)
		expect(ran.stderr).toBe('')
		expect(ran.status).toBe(0)
		const said = JSON.parse(ran.stdout) as {
			reached: string
			interfaces: string[]
			pdf: string
			bytes: number
			visitsHome: number
			sheet: string
			problems: string[]
			served: number
		}
		expect(said).toMatchObject({
			reached: 'ENETUNREACH',
			interfaces: ['lo'],
			pdf: '%PDF-',
			visitsHome: 2,
			sheet: '%PDF-',
			problems: [],
			served: 200,
		})
		expect(said.bytes).toBeGreaterThan(10_000)
	},
	120_000,
)
