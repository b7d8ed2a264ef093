/** Files of earlier versions are read by the commands of this one. */
import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { openProtocol, shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import { clinicSchema } from '../../shared/engine/report/clinic.ts'
import { kinds } from '../../shared/engine/report/kinds.ts'
import { parseVisit } from '../../shared/engine/visit/parse.ts'
import { fixtures, versionsKept } from './manifest.ts'

const command = join(import.meta.dirname, '../../electron/command/main.ts')
const run = (...given: string[]): string =>
	execFileSync(process.execPath, ['--disable-warning=ExperimentalWarning', command, ...given], {
		encoding: 'utf8',
		maxBuffer: 64_000_000,
	})

describe.each(versionsKept())('files of %s', (version) => {
	const file = (name: string): string => join(fixtures, version, 'files', name)
	const json = (name: string) => JSON.parse(readFileSync(file(name), 'utf8'))
	test.each(['visit-adult.json', 'visit-adolescent.json', 'season-visit.json'])(
		'%s is assessed with the shelf and the protocol of then',
		(visit) => {
			const given = ['--shelf', file('shelf.json'), '--protocol', file('protocol.json')]
			const assessment = JSON.parse(run('assess', file(visit), ...given))
			expect(assessment.findings.length).toBeGreaterThan(0)
		},
	)
	test('the plan of then is drawn, and planned on from', () => {
		const here = mkdtempSync(join(tmpdir(), 'lastwright-files-'))
		const [page, next] = [join(here, 'chart.pdf'), join(here, 'next.json')]
		const visit = file('season-visit.json')
		run('report', visit, '--kind', 'season-chart', '--plan', file('plan.json'), '--out', page)
		expect(existsSync(page)).toBe(true)
		const limit = ['--time-limit', '20', '--from', '2027-08-01']
		run('plan', visit, '--earlier', file('plan.json'), ...limit, '--out', next)
		const daysBefore = (plan: { sessions: { date: string }[] }) =>
			plan.sessions.filter(({ date }) => date < '2027-08-01').map(({ date }) => date)
		expect(daysBefore(JSON.parse(readFileSync(next, 'utf8')))).toEqual(
			daysBefore(json('plan.json')),
		)
	})
	test('a report is composed from the assessment of then', () => {
		const visit = parseVisit(json('visit-adult.json'))
		if (!visit.ok) throw new Error(JSON.stringify(visit.problems))
		const assessment = json('assessment.json')
		const document = kinds.player.compose({
			visit: visit.value,
			earlier: [],
			members: [],
			assessment,
			decisions: { lines: [], actions: [] },
			clinic: clinicSchema.parse(json('clinic.json')),
			consents: [],
			protocol: openProtocol(shippedProtocol),
			signedAt: undefined,
			draft: true,
			on: visit.value.visitDate,
		})
		const words = JSON.stringify(document.blocks)
		const said = assessment.findings.filter(({ says }: { says: string }) => words.includes(says))
		expect(said.length).toBeGreaterThan(0)
	})
})
