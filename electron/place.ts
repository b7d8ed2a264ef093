/** Where the program stands: its folder, its files and its threads, as written or as built. */
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** Where the built program lies, from the project's folder. @internal read by its building too */
export const builtProgram = 'build/program'
/** The threads by what they do, as written. @internal read by the building of the program too */
export const threads = {
	pdf: 'electron/pdf/worker.ts',
	solver: 'electron/solver/worker.ts',
	calendar: 'electron/calendar/worker.ts',
} as const
export type ThreadName = keyof typeof threads

const here = dirname(fileURLToPath(import.meta.url))
const isBuilt = here.endsWith(join(builtProgram))
const root = join(here, isBuilt ? '../..' : '..')

/** @param path from the project's folder; '' is the folder itself */
export const placeOf = (path: string): string => join(root, path)
/** The file that a thread begins with. */
export const threadFile = (name: ThreadName): string =>
	isBuilt ? join(here, `${name}.js`) : placeOf(threads[name])
