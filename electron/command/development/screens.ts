/**
 * The screens as they are written, built on the fly and reloaded as they are saved, under the
 * content rules of the real program: no script and no style that the built screens may not have.
 */
import { randomBytes } from 'node:crypto'
import { readFileSync } from 'node:fs'
import type { IncomingMessage, Server, ServerResponse } from 'node:http'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { createServer, type ViteDevServer } from 'vite'
import { cspFor } from '../../loopback/pages.ts'

const root = fileURLToPath(new URL('../../../', import.meta.url))
const inlineScript = /<script type="module">([\s\S]*?)<\/script>/g
const scriptAddress = '/@dev/script-'

export class LiveScreens {
	readonly #vite: ViteDevServer
	/** What the builder writes into the page; the content rules want it at an address of its own. */
	#scripts: string[] = []

	private constructor(vite: ViteDevServer) {
		this.#vite = vite
	}
	/** @param server the server whose connections tell the page about changes */
	static async open(server: Server): Promise<LiveScreens> {
		const vite = await createServer({
			configFile: join(root, 'vite.config.ts'),
			appType: 'custom',
			clearScreen: false,
			logLevel: 'warn',
			server: { middlewareMode: true, hmr: { server } },
		})
		return new LiveScreens(vite)
	}
	/** Runs when a file below one of the folders, given from the project's root, is saved. */
	onChange(folders: readonly string[], act: (file: string) => void): void {
		const places = folders.map((folder) => join(root, folder))
		this.#vite.watcher.add(places)
		this.#vite.watcher.on('change', (file) => {
			if (places.some((place) => file.startsWith(`${place}/`))) act(file.slice(root.length))
		})
	}
	async answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
		const nonce = randomBytes(18).toString('base64')
		response.setHeader('content-security-policy', cspFor(nonce))
		response.setHeader('x-content-type-options', 'nosniff')
		response.setHeader('cache-control', 'no-store')
		const path = (request.url ?? '/').split('?')[0] ?? '/'
		if (path === '/') return this.#page(response, nonce)
		if (path.startsWith(scriptAddress)) return this.#script(path, response)
		this.#vite.middlewares(request, response, () => response.writeHead(404).end())
	}
	async #page(response: ServerResponse, nonce: string): Promise<void> {
		const written = readFileSync(join(root, 'renderer/index.html'), 'utf8')
		const page = await this.#vite.transformIndexHtml('/', written)
		this.#scripts = []
		const ruled = page
			.replaceAll(inlineScript, (_, script: string) => {
				this.#scripts.push(script)
				const address = `${scriptAddress}${this.#scripts.length - 1}.js`
				return `<script type="module" src="${address}"></script>`
			})
			// the builder looks for the nonce of its styles under this name
			.replace('name="csp-nonce"', 'name="csp-nonce" property="csp-nonce" nonce="__NONCE__"')
			.replaceAll('__NONCE__', nonce)
		response.writeHead(200, { 'content-type': 'text/html; charset=utf-8' }).end(ruled)
	}
	async #script(path: string, response: ServerResponse): Promise<void> {
		const script = this.#scripts[Number.parseInt(path.slice(scriptAddress.length), 10)]
		if (script === undefined) {
			response.writeHead(404).end()
			return
		}
		response.writeHead(200, { 'content-type': 'text/javascript; charset=utf-8' }).end(script)
	}
	close(): Promise<void> {
		return this.#vite.close()
	}
}
