/**
 * Trends: three visits whose numbers are known; every number on the screen is one of them or their
 * difference, and each chart says in words what it draws.
 */
import { expect, test } from '@playwright/test'
import { meanOf } from '../../shared/engine/visit/sides.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { decideOn, hostCall } from './drive.ts'
import { startHost } from './host.ts'

const player = {
	givenName: 'Perrin',
	familyName: 'Trendwick',
	birthDate: '2012-04-10',
	sex: 'male' as const,
}
const of = (
	visitDate: string,
	left: number[],
	right: number[],
	lunge: number,
	stature: number,
	mass: number,
	pain: number,
	hours: number,
): Visit =>
	visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player,
		visitDate,
		play: { code: 'association', organisedHoursPerWeek: hours, freePlayHoursPerWeek: 2 },
		body: { statureCm: stature, massKg: mass },
		feet: {
			stance: 'standing',
			examiner: 'I. Darrow',
			left: { heelToToeMm: left },
			right: { heelToToeMm: right },
		},
		ankles: { left: { lungeCm: lunge }, right: { lungeCm: 9.5 } },
		conditions: [
			{ condition: 'calcaneal-apophysitis', side: 'left', status: 'current', painWorst: pain },
		],
		screening: { nightPain: false },
	})
const visits = [
	of('2026-03-02', [235, 235], [238, 238], 8, 152.1, 41.5, 6, 4),
	of('2026-07-06', [237, 237], [239, 239], 8.5, 154.6, 43, 4, 6),
	of('2026-11-20', [241, 241.5], [241, 241], 10.6, 157.9, 45.2, 1, 7),
]
const words = ['2 March 2026', '6 July 2026', '20 November 2026']

test('each number of the trends is right, and each chart has its words', async ({ page }) => {
	page.setDefaultTimeout(15_000)
	const host = await startHost('--demo')
	try {
		await page.goto(host.url)
		await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
		const { playerId } = await hostCall<{ playerId: string }>(page, 'players.save', { player })
		for (const [at, visit] of visits.entries()) {
			const { draft } = await hostCall<{
				draft: { draftId: string; content: { decisions: object } }
			}>(page, 'drafts.open', { playerId, visitDate: visit.visitDate })
			await hostCall(page, 'drafts.save', {
				draftId: draft.draftId,
				content: {
					...draft.content,
					visit,
				},
			})
			await decideOn(page, playerId, visit.visitDate)
			if (at < 2) await hostCall(page, 'visits.sign', { draftId: draft.draftId })
		}
		await page.evaluate((to) => {
			location.hash = to
		}, `#/trends/${playerId}`)
		await expect(
			page.getByRole('heading', { level: 1, name: 'Trends of Perrin Trendwick' }),
		).toBeVisible()
		await expect(page.getByText('3 visits; the last one is a draft, not signed')).toBeVisible()

		// what really changed: since the visit before, against the smallest real change of one examiner
		const changed = page
			.getByRole('heading', { name: 'What really changed' })
			.locator('xpath=ancestor::section')
		const row = (title: string) => changed.getByRole('listitem').filter({ hasText: title })
		await expect(row('Heel to toe, left')).toContainText(
			new RegExp(
				'Real change.*4\\.25 mm more: 241\\.25 mm now, 237 mm on 6 July 2026\\. ' +
					'Smallest real change 4 mm \\(same examiner\\)\\.',
			),
		)
		await expect(row('Heel to toe, right')).toContainText(
			/Within error.*2 mm more: 241 mm now, 239 mm on 6 July 2026/,
		)
		await expect(row('Knee to wall, left')).toContainText(
			'2.1 cm more: 10.6 cm now, 8.5 cm on 6 July 2026',
		)
		await expect(row('Knee to wall, right')).toContainText('The same: 9.5 cm now')
		// the real ones come first
		await expect(changed.getByRole('listitem').first()).toContainText('Real change')

		const chart = (name: RegExp) => page.getByRole('img', { name })
		const course = (values: readonly (number | string)[], unit: string) =>
			values.map((value, at) => `${value} ${unit} on ${words[at]}`).join(', ')
		const round = (value: number) => Math.round(value * 10) / 10
		const left = visits.map((visit) => round(meanOf(visit.feet!.left!.heelToToeMm)!)),
			right = visits.map((visit) => round(meanOf(visit.feet!.right!.heelToToeMm)!))
		await expect(chart(/^Foot length over time/)).toHaveAccessibleName(
			new RegExp(
				`Left foot: ${course(left, 'mm').replaceAll('.', '\\.')}\\. Right foot: ` +
					`${course(right, 'mm')}`,
			),
		)
		await expect(chart(/^Knee to wall/)).toHaveAccessibleName(/8 cm.*8\.5 cm.*10\.6 cm/)
		await expect(chart(/^Stature/)).toHaveAccessibleName(/152\.1.*154\.6.*157\.9/)
		await expect(chart(/^Body mass/)).toHaveAccessibleName(/41\.5.*43.*45\.2/)
		await expect(chart(/^Worst pain/)).toHaveAccessibleName(new RegExp(course([6, 4, 1], '/10')))
		await expect(chart(/^Hours of sport a week/)).toHaveAccessibleName(
			new RegExp(`organised sport: ${course([4, 6, 7], 'h/week')}`),
		)
		// the numbers of each chart are one press away
		for (const name of ['Foot length over time', 'Worst pain', 'Hours of sport a week']) {
			await page.getByRole('button', { name: new RegExp(`^Numbers\\s*: ${name}`) }).press('Enter')
			const numbers = page.getByRole('region', { name: `Numbers: ${name}` }).getByRole('table')
			for (const day of words)
				await expect(numbers.getByRole('rowheader', { name: day })).toBeVisible()
		}
		await expect(
			page
				.getByRole('region', { name: 'Numbers: Worst pain' })
				.getByRole('row')
				.filter({ hasText: words[2] }),
		).toContainText('1')

		const table = page.getByRole('region', { name: 'Visits side by side' }).getByRole('table')
		const cells = (name: string) =>
			table
				.getByRole('row')
				.filter({ has: page.getByRole('rowheader', { name, exact: true }) })
				.getByRole('cell')
		await expect(table.getByRole('columnheader')).toHaveText([
			'Measure',
			words[0]!,
			words[1]!,
			`${words[2]} (draft)`,
		])
		await expect(cells('Heel to toe, left (mm)')).toHaveText(left.map(String))
		await expect(cells('Heel to toe, right (mm)')).toHaveText(right.map(String))
		await expect(cells('Knee to wall, left (cm)')).toHaveText(['8', '8.5', '10.6'])
		await expect(cells('Age (years)')).toHaveText(['13', '14', '14'])
		await expect(cells('Worst pain, calcaneal apophysitis (growing heel), left (/10)')).toHaveText([
			'6',
			'4',
			'1',
		])
		if (process.env.LASTWRIGHT_SHOTS)
			await page.screenshot({
				path: `${process.env.LASTWRIGHT_SHOTS}/trends-three.png`,
				fullPage: true,
			})
	} finally {
		await host.kill()
	}
})
