/** The whole main job in a network namespace that has nothing but loopback. */
import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'

const script = fileURLToPath(new URL('./fixtures/main-job.ts', import.meta.url))
const inNamespace = (command: string) => spawnSync('unshare', ['-n', 'sh', '-c', `ip link set lo up && ${command}`], { encoding: 'utf8' })
const able = process.platform === 'linux' && process.getuid?.() === 0 && inNamespace('true').status === 0

test.skipIf(!able)(`set up, draft, sign and report with no network${able ? '' : ' (skipped: needs Linux, root, unshare and ip)'}`, () => {
	const ran = inNamespace(`exec '${process.execPath}' --disable-warning=ExperimentalWarning '${script}'`)
	expect(ran.stderr).toBe('')
	expect(ran.status).toBe(0)
	const said = JSON.parse(ran.stdout) as { reached: string; interfaces: string[]; pdf: string; bytes: number }
	expect(said).toMatchObject({ reached: 'ENETUNREACH', interfaces: ['lo'], pdf: '%PDF-' })
	expect(said.bytes).toBeGreaterThan(10_000)
}, 60_000)
