import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import {
	answerPage,
	isOwnBlob,
	isOwnUrl,
	isTrustedSender,
	mayNavigate,
	mayRequest,
	webPreferences,
} from '../../electron/window/security.ts'
import { folder } from './counting-app.ts'

describe('the window allows', () => {
	test.each(['app://lastwright/', 'app://lastwright/assets/a.js'])('its own %s', (url) =>
		expect([
			isOwnUrl(url),
			mayRequest(url),
			isOwnBlob(`blob:${url}`),
			mayNavigate(`blob:${url}`, false),
		]).toEqual([true, true, true, true]),
	)
	test.each([
		'app://lastwright.example/',
		'app://user@lastwright/',
		'app://lastwright:80/',
		'https://lastwright/',
		'file:///etc/passwd',
		'javascript:alert(1)',
		'appx://lastwright/',
		'not an address',
	])('nothing from %s', (url) => {
		expect([
			isOwnUrl(url),
			mayRequest(url),
			isOwnBlob(`blob:${url}`),
			mayNavigate(url, true),
			mayNavigate(url, false),
			isTrustedSender({ url, parent: null }),
		]).toEqual([false, false, false, false, false, false])
	})
	test('no navigation of the window, and calls from its top frame only', () => {
		expect([
			mayNavigate('app://lastwright/', true),
			mayNavigate('blob:app://lastwright/x', true),
			isTrustedSender(null),
			isTrustedSender({ url: 'app://lastwright/', parent: {} }),
			isTrustedSender({ url: 'app://lastwright/', parent: null }),
		]).toEqual([false, false, false, false, true])
		expect(webPreferences('p')).toMatchObject({
			contextIsolation: true,
			sandbox: true,
			nodeIntegration: false,
			webSecurity: true,
		})
	})
	test('the built screens under a fresh nonce, and no file beside them', () => {
		const above = folder()
		const pages = join(above, 'renderer')
		mkdirSync(pages)
		mkdirSync(join(above, 'renderer-old'))
		writeFileSync(join(pages, 'index.html'), '<meta content="__NONCE__">')
		writeFileSync(join(pages, 'a.js'), 'const text = "__NONCE__"')
		for (const name of ['secret.txt', 'renderer-old/secret.txt'])
			writeFileSync(join(above, name), 'secret')
		symlinkSync(join(above, 'secret.txt'), join(pages, 'link.txt'))
		const get = (path: string, method = 'GET') =>
			answerPage(pages, { method, url: `app://lastwright${path}` })
		const nonces = [get('/'), get('/')].map(({ status, headers, body }) => {
			const nonce = /content="([^"]+)"/.exec(String(Buffer.from(body ?? [])))?.[1] ?? ''
			expect([
				status,
				headers['content-security-policy']?.includes(`'nonce-${nonce}'`),
				headers['x-content-type-options'],
				headers['content-type'],
			]).toEqual([200, true, 'nosniff', 'text/html; charset=utf-8'])
			expect(headers['content-security-policy']).not.toMatch(/unsafe|https?:|\*/)
			return nonce
		})
		expect(nonces[0]).toMatch(/^[\w+/]{24}$/)
		expect(nonces[0]).not.toBe(nonces[1])
		expect(String(Buffer.from(get('/a.js').body ?? []))).toContain('__NONCE__')
		for (const path of [
			'/../secret.txt',
			'/%2e%2e/secret.txt',
			'/..%2fsecret.txt',
			'/%2e%2e%2frenderer-old/secret.txt',
			'/..%5csecret.txt',
			'/link.txt',
			'/%00',
			'/%',
			'/none.js',
		])
			expect(get(path).status, path).toBe(404)
		expect([
			get('/', 'POST').status,
			get('/', 'HEAD').body,
			answerPage(pages, { method: 'GET', url: 'app://other/' }).status,
		]).toEqual([405, null, 403])
	})
})
