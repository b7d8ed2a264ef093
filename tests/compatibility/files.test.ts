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

type Kept = Parameters<typeof kinds.player.compose>[0]['assessment']
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
	/** Before 0.3.0 a finding was its sentence alone. */
	const withoutCodes = () =>
		JSON.parse(JSON.stringify(json('assessment.json')), (key, value) =>
			key === 'code' || key === 'params' ? undefined : value,
		)
	const composed = (kind: 'player' | 'referral', assessment: Kept) => {
		const visit = parseVisit(json('visit-adult.json'))
		if (!visit.ok) throw new Error(JSON.stringify(visit.problems))
		return kinds[kind].compose({
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
		}).blocks
	}
	test('a report is composed from the assessment of then', () => {
		const assessment = withoutCodes()
		const words = JSON.stringify(composed('player', assessment))
		const { min, max } = assessment.sizing.insideLengthMm
		// a shop measures in whole millimetres
		expect(words).toContain(`${Math.ceil(min)} to ${Math.floor(max)} mm`)
		// its sentences were made for the clinician: nobody knows any more for whom else
		expect(assessment.findings.length).toBeGreaterThan(0)
		for (const { says } of assessment.findings) expect(words).not.toContain(says)
	})
	/** Since 0.4.0 the gate of the plan says what a sign holds. */
	const heldBy = (prescription: NonNullable<Kept['prescription']>, rule: string) => {
		const { person } = prescription.gate
		const hold = { what: 'sport', rule, until: 'outcome', since: '2027-01-20' } as const
		const held = { state: 'held', action: 'same-day', holds: [hold], because: [rule] } as const
		return { ...prescription, gate: { ...prescription.gate, person: { ...person, ...held } } }
	}
	test('danger leads the page of then all the same, and the doctor is told', () => {
		const assessment = withoutCodes()
		const sign = { ...assessment.screening.items[0], state: 'yes', action: 'same-day' }
		const says = 'A sign as a version of before said it.'
		const endangered = {
			...assessment,
			screening: { ...assessment.screening, action: 'same-day', items: [{ ...sign, says }] },
			...(assessment.prescription && { prescription: heldBy(assessment.prescription, sign.id) }),
		}
		expect(composed('player', endangered)[0]?.kind).toBe('alert')
		expect(JSON.stringify(composed('referral', endangered))).toContain(says)
	})
})
