/** `npm run dev`: the same content rules as the real program, and a host that can be replaced. */
import { mkdtempSync, readdirSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { RestartingHost } from '../../electron/command/development/restarting-host.ts'
import { LiveScreens } from '../../electron/command/development/screens.ts'
import { cspFor } from '../../electron/loopback/pages.ts'

describe('the screens', () => {
	let server: Server
	let screens: LiveScreens
	let address = ''
	beforeAll(async () => {
		server = createServer((request, response) => void screens.answer(request, response))
		await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
		address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`
		screens = await LiveScreens.open(server)
	})
	afterAll(async () => {
		await screens.close()
		server.closeAllConnections()
		server.close()
	})
	it('come under the content rules of the built ones, with a new nonce each time', async () => {
		const pages = [await fetch(address), await fetch(address)]
		const nonces = pages.map((page) => {
			const rules = page.headers.get('content-security-policy') ?? ''
			const nonce = /'nonce-([^']+)'/.exec(rules)?.[1] ?? ''
			expect(rules).toBe(cspFor(nonce))
			return nonce
		})
		expect(new Set(nonces).size).toBe(2)
	})
	it('have every script at an address of its own, which is answered', async () => {
		const page = await (await fetch(address)).text()
		const scripts = [...page.matchAll(/<script([^>]*)>([\s\S]*?)<\/script>/g)]
		expect(scripts.length).toBeGreaterThan(1)
		for (const [, attributes, text] of scripts) {
			expect(text).toBe('')
			const source = /src="([^"]+)"/.exec(attributes ?? '')?.[1]
			const script = await fetch(`${address}${source}`)
			expect([source, script.status]).toEqual([source, 200])
		}
	})
	it('answer nothing outside them', async () =>
		expect((await fetch(`${address}/@dev/script-99.js`)).status).toBe(404))
})

describe('the host', () => {
	it('keeps what was entered over a restart, and says so where it has stopped', async () => {
		const folder = mkdtempSync(join(tmpdir(), 'lastwright-dev-'))
		const host = new RestartingHost(folder, () => {})
		try {
			await host.restart()
			const player = {
				givenName: 'Ada',
				familyName: 'Quarles',
				birthDate: '2001-02-03',
				sex: 'female',
			}
			expect(await host.call('players.save', { player })).toMatchObject({ ok: true })
			await host.restart()
			const found = await host.call('players.search', { query: 'quarles', limit: 5 })
			expect(found).toMatchObject({ ok: true })
			expect(JSON.stringify(found)).toContain('Quarles')
		} finally {
			await host.stop()
		}
		expect(await host.call('session.status', {})).toMatchObject({ ok: false })
		expect(readdirSync(folder)).not.toEqual([])
	}, 120_000)
})
