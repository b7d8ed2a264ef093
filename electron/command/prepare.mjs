// What `npm start`, `npm run dev`, `npm test` and `npm run lastwright` run first. Plain JavaScript for the Node that is on
// the machine (20.19 or later): nothing may be installed yet.
import { spawn } from 'node:child_process'
import { existsSync, readdirSync, statSync, writeFileSync } from 'node:fs'
import { constants } from 'node:os'
import { delimiter, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = join(dirname(fileURLToPath(import.meta.url)), '../..')
const bin = join(root, 'node_modules/.bin')
const isWindows = process.platform === 'win32'
const env = { ...process.env, PATH: `${bin}${delimiter}${process.env.PATH ?? ''}` }
const [name, ...args] = process.argv.slice(2)
/** The answer of a command is all that stands on its standard output. */
const isCommand = name === 'lastwright'
const tell = (text) => (isCommand ? process.stderr : process.stdout).write(`lastwright: ${text}\n`)

// what this process is told to end, the program it runs is told too, and it waits for its end
let running
let toldBy
function endBy(signal) {
	toldBy ??= signal
	if (running) signalAll(running, signal)
}
/** Signals a program with all that it started: a shell between would not hand it on. */
function signalAll(child, signal) {
	try {
		if (isWindows) child.kill(signal)
		else process.kill(-child.pid, signal)
	} catch {
		// it has no group of its own, or it ended by itself meanwhile
		child.kill(signal)
	}
}
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => endBy(signal))
// npm runs this by a shell: where npm is told to end, the shell ends and this is not told
if (process.env.npm_lifecycle_event !== undefined) {
	const shell = process.ppid
	setInterval(() => {
		if (process.ppid !== shell) endBy('SIGTERM')
	}, 250).unref()
}

/** Runs a program to its end. @returns its exit status */
function run(command, args, { quiet = false, own = false, limitMs, more = {} } = {}) {
	return new Promise((resolve) => {
		const child = spawn(command, args, {
			cwd: root,
			stdio: quiet ? 'ignore' : isCommand && !own ? ['inherit', 2, 2] : 'inherit',
			env: { ...env, ...more },
			shell: isWindows,
			// a group of its own, so that all of it can be told to end; a command reads what is typed
			detached: !isWindows && !own,
		})
		running = child
		const late = limitMs && setTimeout(() => signalAll(child, 'SIGTERM'), limitMs)
		const ended = (status) => {
			clearTimeout(late)
			running = undefined
			resolve(status)
		}
		child.once('error', (error) => {
			if (!quiet) tell(`${command} could not be run: ${error.message}`)
			ended(1)
		})
		child.once('exit', (status) => ended(status ?? 1))
	})
}
/** The same for a step that all later ones need: ends this program where it fails. */
async function must(what, command, args, more) {
	const status = await run(command, args, { more })
	if (toldBy) process.exit(128 + constants.signals[toldBy])
	if (status === 0) return
	tell(`${what} failed (${command} ended with ${status}).`)
	process.exit(status)
}
const changedMs = (file) => (existsSync(file) ? statSync(file).mtimeMs : 0)
/** The newest change below the given files and folders, in ms. */
function newestMs(...places) {
	let latest = 0
	for (const place of places) {
		latest = Math.max(latest, changedMs(place))
		if (existsSync(place) && statSync(place).isDirectory())
			for (const name of readdirSync(place)) latest = Math.max(latest, newestMs(join(place, name)))
	}
	return latest
}
async function install() {
	const mark = join(root, 'node_modules/.package-lock.json')
	if (
		existsSync(mark) &&
		existsSync(join(root, 'node_modules/node/bin')) &&
		changedMs(mark) >= changedMs(join(root, 'package-lock.json')) - 1000
	)
		return
	tell('installing the packages (npm ci); this takes about a minute.')
	await must('Installing', 'npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'])
}
const programFile = 'build/program/main.js'
/** What is built, the file that comes last, and what it is made of. */
const parts = [
	{
		what: 'the program',
		script: 'build:program',
		last: programFile,
		sources: ['electron', 'shared', 'vite.program.config.ts', 'package-lock.json'],
	},
	{
		what: 'the screens',
		script: 'build:screens',
		last: 'build/renderer/index.html',
		sources: ['renderer', 'shared', 'vite.config.ts', 'package-lock.json'],
	},
]
async function build() {
	for (const { what, script, last, sources } of parts.slice(0, isCommand ? 1 : parts.length)) {
		const newest = newestMs(...sources.map((source) => join(root, source)))
		if (changedMs(join(root, last)) >= newest) continue
		tell(`building ${what}.`)
		await must('Building', 'npm', ['run', '-s', script, '--', '--logLevel', 'warn'])
	}
}
/**
 * Electron's runtime is a download of its own. Tried once for each installed version; where it
 * cannot be had, the browser window serves.
 */
async function fetchRuntime() {
	const folder = join(root, 'node_modules/electron')
	const mark = join(folder, '.runtime-tried')
	if (
		existsSync(join(folder, 'path.txt')) ||
		existsSync(mark) ||
		process.env.CI ||
		args.includes('--no-window')
	)
		return
	tell("looking for Electron's runtime (once).")
	const status = await run(nodePinned(), [join(folder, 'install.js')], {
		quiet: true,
		limitMs: 120_000,
	})
	if (status === 0 || toldBy) return
	writeFileSync(mark, '')
	tell("Electron's runtime cannot be downloaded here.")
}
const nodePinned = () => {
	const file = join(root, 'node_modules/node/bin', isWindows ? 'node.exe' : 'node')
	return existsSync(file) ? file : process.execPath
}

const browserNames = [
	'chromium',
	'chromium-browser',
	'google-chrome',
	'google-chrome-stable',
	'microsoft-edge',
]
const foldersOnPath = (process.env.PATH ?? '').split(delimiter)
const isOnPath = (name) => foldersOnPath.some((folder) => existsSync(join(folder, name)))

function findBrowser() {
	const named = process.env.LASTWRIGHT_BROWSER
	if (named && existsSync(named)) return named
	const fixed = [
		'/usr/bin/chromium',
		'/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
		'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
		'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
	]
	const onPath = foldersOnPath.flatMap((folder) => browserNames.map((name) => join(folder, name)))
	return [...fixed, ...onPath].find((file) => existsSync(file))
}
/** Programs of Debian that tests use, and what is left out where one is missing. */
const testTools = [
	{
		debian: 'chromium',
		isThere: () => findBrowser() !== undefined,
		without: 'the browser tests ask Playwright for its own Chromium',
	},
	{
		debian: 'units',
		isThere: () => isOnPath('units'),
		without: 'the checks of sizes against GNU units are skipped',
	},
	{
		debian: 'qpdf',
		isThere: () => isOnPath('qpdf'),
		without: 'the check of encrypted copies by qpdf is skipped',
	},
	{
		debian: 'poppler-utils',
		isThere: () => isOnPath('pdftoppm'),
		without: 'pictures of pages cannot be made',
	},
	{
		debian: 'postgresql',
		isThere: () => isOnPath('postgres') || existsSync('/usr/lib/postgresql'),
		without: 'the tests with a server for several PCs are skipped',
	},
]
async function installTestTools() {
	const missing = () => testTools.filter((tool) => !tool.isThere())
	const packages = missing().map((tool) => tool.debian)
	const mayInstall = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')
	if (packages.length > 0 && mayInstall) {
		tell(`installing for the tests, from Debian: ${packages.join(', ')}.`)
		const more = { DEBIAN_FRONTEND: 'noninteractive' }
		await run('apt-get', ['update', '-qq'], { quiet: true })
		await run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], {
			quiet: true,
			more,
		})
	}
	const why = mayInstall ? 'could not be installed' : 'is not there (installing it needs root)'
	for (const { debian, without } of missing()) tell(`${debian} ${why}: ${without}.`)
}
/** @returns '' for Playwright's own; undefined where there is none */
async function browserForTests() {
	const found = findBrowser()
	if (found) return found
	tell('asking Playwright for its own Chromium.')
	if ((await run('npx', ['playwright', 'install', 'chromium'])) === 0) return ''
	tell(
		'no browser could be installed. Install Chromium or Chrome, or name one in ' +
			'LASTWRIGHT_BROWSER, then run npm test again.',
	)
	return undefined
}
async function startWorkstation() {
	await fetchRuntime()
	if (toldBy) return 128 + constants.signals[toldBy]
	return run(nodePinned(), [
		...['--disable-warning=ExperimentalWarning', programFile, 'start'],
		...args,
	])
}
/** The screens are built on the fly there, so nothing is built before. */
async function develop() {
	const serve = 'electron/command/development/serve.ts'
	return run(nodePinned(), ['--disable-warning=ExperimentalWarning', serve, ...args])
}
async function test() {
	await installTestTools()
	tell('types, lint, boundaries, unit and published tests.')
	await must('Checking', 'npm', ['run', '-s', 'check'])
	tell('host tests: real files, sockets and processes.')
	await must('The host tests', 'npm', ['run', '-s', 'host'])
	const found = await browserForTests()
	if (found === undefined) return 1
	tell(`browser tests in ${found || "Playwright's own Chromium"}.`)
	const more = found ? { LASTWRIGHT_BROWSER: found } : {}
	await must('The browser tests', 'npm', ['run', '-s', 'screens'], more)
	tell('all tests passed.')
	return 0
}

const command = () =>
	run(nodePinned(), ['--disable-warning=ExperimentalWarning', programFile, ...args], { own: true })

const tasks = { start: startWorkstation, dev: develop, test, lastwright: command }
const task = Object.hasOwn(tasks, name ?? '') ? tasks[name] : undefined
if (!task) {
	tell(`unknown task ${JSON.stringify(name)}; use start, dev, test or lastwright.`)
	process.exit(2)
}
await install()
if (name !== 'dev') await build()
process.exit(await task())
