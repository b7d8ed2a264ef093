/**
 * An outreach day at the real screen: the clinic packs, a laptop without records opens the pack and
 * works, both change the same things, and all of it comes home.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from '@playwright/test'
import { startHost, today } from './host.ts'
import { feet, openPlayer, workAt } from './outreach-drive.ts'
import { comeHome, emptyLaptop, readTrail } from './outreach-home.ts'
import { makePack, makeReturn, openPack } from './outreach-packs.ts'
import { answerQuestions, joinDrafts, joinTwice } from './outreach-settling.ts'

test(
	'a pack goes out with two players, the laptop works without the clinic, and everything ' +
		'comes home once',
	async ({ browser }, info) => {
		test.setTimeout(240_000)
		const data = mkdtempSync(join(tmpdir(), 'lastwright-laptop-'))
		const stick = mkdtempSync(join(tmpdir(), 'lastwright-stick-'))
		writeFileSync(join(stick, 'note.txt'), 'a file, not a folder')
		const faults: string[] = []
		let from = Date.now()
		const lap = (what: string) => {
			info.annotations.push({
				type: 'seconds',
				description: `${what}: ${((Date.now() - from) / 1000).toFixed(1)}`,
			})
			if (process.env.LASTWRIGHT_LAPS)
				console.log(`${what}: ${((Date.now() - from) / 1000).toFixed(1)} s`)
			from = Date.now()
		}
		// one cookie jar each: a jar does not tell ports apart
		const pageOf = async () => {
			const page = await (
				await browser.newContext({ viewport: { width: 1280, height: 720 } })
			).newPage()
			// a wrong step is named at once, not after the whole time of the test
			page.setDefaultTimeout(20_000)
			page.on('console', (message) => {
				if (/Content Security Policy|unique "key"/i.test(message.text()))
					faults.push(message.text())
			})
			page.on('pageerror', (error) => faults.push(error.message))
			return page
		}
		const [clinicHost, laptopHost] = await Promise.all([
			startHost(today),
			startHost('--data', data),
		])
		const [clinic, laptop] = await Promise.all([pageOf(), pageOf()])
		try {
			const pack = await makePack(clinic, clinicHost.url, stick)
			lap('pack made')

			await openPack(laptop, laptopHost.url, pack)
			lap('pack opened')

			// away: details and a consent of one player, a short assessment, a player entered on the spot
			await workAt(laptop, 'Tidewater United U14', 'deny', '247')
			await openPlayer(laptop, 'owain', 'Owain Trescott')
			await feet(laptop, /assessment$/, '271', '272')
			lap('worked away')

			// meanwhile at the clinic: the same fields of the same player, and the same newcomer
			await workAt(clinic, 'Saltmarsh Rovers U15', 'permit', '245')
			lap('worked at home')

			const returned = await makeReturn(laptop, stick)
			const receipt = await comeHome(clinic, { stick, pack, returned })
			lap('brought home')

			await answerQuestions(clinic)
			await joinDrafts(clinic)
			await joinTwice(clinic)
			lap('answered and joined')

			await readTrail(clinic)
			await emptyLaptop(laptop, receipt)
			lap('laptop emptied')
			expect(faults).toEqual([])
		} finally {
			await Promise.all([clinicHost.kill(), laptopHost.kill()])
			for (const folder of [data, stick]) rmSync(folder, { recursive: true, force: true })
		}
	},
)
