/**
 * The demo's records: kept beside the built screens and copied at each later start, since opening
 * takes less time than filling. The past is filled once a week, the day once a day.
 */
import { createHash } from 'node:crypto'
import {
	cpSync,
	mkdirSync,
	mkdtempSync,
	readdirSync,
	readFileSync,
	renameSync,
	rmSync,
	statSync,
	writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { type App, type AppOptions, createApp } from '../../app.ts'
import { renderPdf } from '../../pdf/render.ts'
import { placeOf } from '../../place.ts'
import { PastClock } from './clock.ts'
import { type Filling, fillPast, fillToday } from './fill.ts'
import { demoPassphrase } from './passphrase.ts'
import { weekOf } from './scenario.ts'

const build = placeOf('build')
/** What is kept beside the screens: the past, filled once a week, and the day upon it. */
type Layer = 'past' | 'day'
const kept = join(build, 'demo')
const keptAs = (layer: Layer, mark: string): string => join(kept, `${layer}-${mark.slice(0, 16)}`)
/** So many of a layer: of today, and of a day that was asked for. */
const mostKept = 2
/** What the records were made of, and on which day: any change has them made anew. */
const madeOf = ['electron', 'shared', 'assets/demo', 'package-lock.json']

function fingerprint(day: string): string {
	const hash = createHash('sha256').update(day)
	const add = (path: string) => {
		const { mtimeMs, size } = statSync(path)
		hash.update(`${path} ${mtimeMs} ${size}\n`)
		if (statSync(path).isDirectory())
			for (const name of readdirSync(path).toSorted()) add(join(path, name))
	}
	for (const place of madeOf) add(placeOf(place))
	return hash.digest('hex')
}
function copied(layer: Layer, mark: string, folder: string): boolean {
	try {
		const from = keptAs(layer, mark)
		if (readFileSync(join(from, 'made-of'), 'utf8') !== mark) return false
		cpSync(join(from, 'records'), folder, { recursive: true })
		return true
	} catch {
		return false
	}
}
/** Keeps a copy for the next start. Where that cannot be done the next start fills them again. */
function keep(layer: Layer, mark: string, folder: string): void {
	try {
		mkdirSync(kept, { recursive: true })
		const making = mkdtempSync(join(build, 'demo-'))
		cpSync(folder, join(making, 'records'), { recursive: true })
		writeFileSync(join(making, 'made-of'), mark)
		rmSync(keptAs(layer, mark), { recursive: true, force: true })
		// of two that start at once one is first
		try {
			renameSync(making, keptAs(layer, mark))
		} catch {
			rmSync(making, { recursive: true, force: true })
		}
		forgetOlder(layer)
	} catch {
		/* a folder that cannot be written: nothing is kept */
	}
}
/** Of a layer the latest stay; what was kept in another form goes too. */
function forgetOlder(layer: Layer): void {
	const madeAt = (name: string) => statSync(join(kept, name)).mtimeMs
	const names = readdirSync(kept)
		.filter((name) => name.startsWith(layer))
		.toSorted((one, other) => madeAt(other) - madeAt(one))
	for (const name of names.slice(mostKept))
		rmSync(join(kept, name), { recursive: true, force: true })
}
interface Opening {
	/** an empty folder that is thrown away at the end */
	folder: string
	/** the clock of the demo; it is told on the day that it shows */
	now: () => Date
	/** with those who were seen again, whom the counts of what became of it need */
	isFull?: boolean
	/** where faults of ours are noted */
	note: (text: string) => void
	/** where it says why it takes a while */
	tell?: (text: string) => void
}
/**
 * @returns the workstation, unlocked. @throws Error naming the call that refused
 */
export async function openDemo(opening: Opening): Promise<App> {
	const { folder, now } = opening
	const today = dayHere(now())
	const mark = fingerprint(`${toldTo(opening)}${today}`)
	const app = copied('day', mark, folder) ? await unlockDemo(opening) : undefined
	if (app) return app
	await takePast(opening, today)
	await filled(opening, today, fillToday)
	keep('day', mark, folder)
	const opened = await unlockDemo(opening)
	if (!opened) throw new Error('demo: session.unlock refused')
	return opened
}
/** The two demos are kept apart. */
const toldTo = ({ isFull = false }: Opening): string => (isFull ? 'full, ' : '')
/** Puts into the folder all that was before today: a copy, or filled where there is none. */
async function takePast(opening: Opening, today: string): Promise<void> {
	const { folder, tell } = opening
	const mark = fingerprint(`${toldTo(opening)}before ${weekOf(today)}`)
	emptied(folder)
	if (copied('past', mark, folder)) {
		const app = await unlockDemo(opening)
		app?.close()
		if (app) return
	}
	emptied(folder)
	tell?.('The demo is filled, once a week. This takes a while; later starts open at once.')
	await filled(opening, today, fillPast)
	keep('past', mark, folder)
}
function emptied(folder: string): void {
	rmSync(folder, { recursive: true, force: true })
	mkdirSync(folder, { recursive: true })
}
async function filled(
	opening: Opening,
	today: string,
	fill: (filling: Filling) => Promise<void>,
): Promise<void> {
	const clock = new PastClock(opening.now())
	const app = createApp(optionsOf({ ...opening, now: clock.now }))
	try {
		const { folder, isFull = false } = opening
		await fill({ app, clock, today, isFull, dataFolder: folder })
	} finally {
		app.close()
	}
}
const optionsOf = ({ folder, now, note }: Opening): AppOptions => ({
	dataFolder: folder,
	renderPdf,
	demo: true,
	scryptCost: 1024,
	now,
	note,
})
/**
 * Opens records of the demo that are there. @returns undefined where they cannot be unlocked
 * @internal
 */
export async function unlockDemo(opening: Opening): Promise<App | undefined> {
	const app = createApp(optionsOf(opening))
	if ((await app.call('session.unlock', { passphrase: demoPassphrase })).ok) return app
	app.close()
	return undefined
}
