// What `npm start` and `npm test` run first. Plain JavaScript for the Node that is on the machine
// (20.19 or later): nothing may be installed yet.
import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync, statSync, writeFileSync } from 'node:fs'
import { delimiter, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = join(dirname(fileURLToPath(import.meta.url)), '../..')
const bin = join(root, 'node_modules/.bin')
const windows = process.platform === 'win32'
const env = { ...process.env, PATH: `${bin}${delimiter}${process.env.PATH ?? ''}` }
const tell = (text) => process.stdout.write(`lastwright: ${text}\n`)

function run(command, args, extra = {}) {
	const done = spawnSync(command, args, {
		cwd: root,
		stdio: 'inherit',
		env: { ...env, ...extra },
		shell: windows,
	})
	if (done.error) {
		tell(`${command} could not be run: ${done.error.message}`)
		return 1
	}
	return done.status ?? 1
}
function must(what, command, args, extra) {
	const status = run(command, args, extra)
	if (status !== 0) {
		tell(`${what} failed (${command} ended with ${status}).`)
		process.exit(status)
	}
}
const time = (file) => (existsSync(file) ? statSync(file).mtimeMs : 0)
/** The newest change below the given files and folders. */
function newest(...places) {
	let latest = 0
	for (const place of places) {
		latest = Math.max(latest, time(place))
		if (existsSync(place) && statSync(place).isDirectory())
			for (const name of readdirSync(place)) latest = Math.max(latest, newest(join(place, name)))
	}
	return latest
}
function install() {
	const mark = join(root, 'node_modules/.package-lock.json')
	if (
		existsSync(mark) &&
		existsSync(join(root, 'node_modules/node/bin')) &&
		time(mark) >= time(join(root, 'package-lock.json')) - 1000
	)
		return
	tell('installing the packages (npm ci); this takes about a minute.')
	must('Installing', 'npm', ['ci', '--no-audit', '--no-fund'])
}
function build() {
	const built = join(root, 'build/renderer/index.html')
	if (
		time(built) >
		newest(
			join(root, 'renderer'),
			join(root, 'shared'),
			join(root, 'vite.config.ts'),
			join(root, 'package-lock.json'),
		)
	)
		return
	tell('building the screens.')
	must('Building', 'npm', ['run', '-s', 'build'])
}
/**
 * Electron's runtime is a download of its own. Tried once for each installed version; where it
 * cannot be had, the browser window serves.
 */
function fetchRuntime() {
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
	const done = spawnSync(nodePinned(), [join(folder, 'install.js')], {
		cwd: root,
		stdio: 'ignore',
		env,
		timeout: 120_000,
	})
	if (done.status === 0) return
	writeFileSync(mark, '')
	tell("Electron's runtime cannot be downloaded here.")
}
const nodePinned = () => {
	const file = join(root, 'node_modules/node/bin', windows ? 'node.exe' : 'node')
	return existsSync(file) ? file : process.execPath
}

const browserNames = [
	'chromium',
	'chromium-browser',
	'google-chrome',
	'google-chrome-stable',
	'microsoft-edge',
]
function findBrowser() {
	if (process.env.LASTWRIGHT_BROWSER && existsSync(process.env.LASTWRIGHT_BROWSER))
		return process.env.LASTWRIGHT_BROWSER
	const fixed = [
		'/usr/bin/chromium',
		'/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
		'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
		'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
	]
	return [
		...fixed,
		...(process.env.PATH ?? '')
			.split(delimiter)
			.flatMap((folder) => browserNames.map((name) => join(folder, name))),
	].find((file) => existsSync(file))
}
function browser() {
	const found = findBrowser()
	if (found) return found
	if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
		tell('no browser found: installing Debian packages chromium and poppler-utils.')
		run('apt-get', ['update', '-qq'])
		run(
			'apt-get',
			['install', '-y', '-qq', '--no-install-recommends', 'chromium', 'poppler-utils'],
			{ DEBIAN_FRONTEND: 'noninteractive' },
		)
		const now = findBrowser()
		if (now) return now
	}
	tell('no browser found: asking Playwright for its own Chromium.')
	if (run('npx', ['playwright', 'install', 'chromium']) === 0) return ''
	tell(
		'no browser could be installed. Install Chromium or Chrome, or name one in ' +
			'LASTWRIGHT_BROWSER, then run npm test again.',
	)
	return undefined
}

const [task, ...args] = process.argv.slice(2)
install()
build()
if (task === 'start') {
	fetchRuntime()
	process.exit(
		run(nodePinned(), [
			'--disable-warning=ExperimentalWarning',
			'electron/command/main.ts',
			'start',
			...args,
		]),
	)
} else if (task === 'test') {
	tell('types, lint, boundaries, unit and published tests.')
	must('Checking', 'npm', ['run', '-s', 'check'])
	tell('host tests: real files, sockets and processes.')
	must('The host tests', 'npm', ['run', '-s', 'host'])
	const found = browser()
	if (found === undefined) process.exit(1)
	tell(`browser tests in ${found || "Playwright's own Chromium"}.`)
	must(
		'The browser tests',
		'npm',
		['run', '-s', 'screens'],
		found ? { LASTWRIGHT_BROWSER: found } : {},
	)
	tell('all tests passed.')
} else {
	tell(`unknown task ${JSON.stringify(task)}; use start or test.`)
	process.exit(2)
}
