/**
 * Damages the records of one PC, round after round, and tells how each was met. Started by
 * damages.ts. The records keep their place and their file: a copy would be noticed as one.
 */
import { linkSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { chance } from './chance.ts'
import type { Damage, Outcome } from './damages.ts'
import { filesOf, plainProgram } from './everything.ts'
import { backupSays, type Look, lookAt } from './looks.ts'

const [pc = '', seed = '0', from = '1', to = '0'] = process.argv.slice(2)
const records = join(pc, 'records', 'lastwright.db')
const kept = join(pc, 'kept.db')
const program = await plainProgram()

// one opening settles what is new to this place; what stands then is what is damaged
await lookAt(program, pc)
linkSync(records, kept)
const files = filesOf(join(pc, 'records'))
const outside = filesOf(join(pc, 'outside'))
const original = files.get('lastwright.db') as Buffer

/** Everything as it was, but for the bytes of the records file. */
function put(bytes: Buffer): void {
	for (const [folder, contents] of [
		['records', files],
		['outside', outside],
	] as const) {
		const here = join(pc, folder)
		for (const name of readdirSync(here)) rmSync(join(here, name), { recursive: true, force: true })
		for (const [name, content] of contents)
			if (name !== 'lastwright.db') writeFileSync(join(here, name), content)
	}
	writeFileSync(kept, bytes)
	linkSync(kept, records)
}
function damaged(round: number): { bytes: Buffer; at: string } {
	const drawn = chance(Number(seed), round)
	const at = drawn.below(original.length)
	const was = original[at] as number
	const bytes = Buffer.from(original)
	const isBit = drawn.below(2) === 0
	bytes[at] = isBit ? was ^ (1 << drawn.below(8)) : (was + 1 + drawn.below(255)) % 256
	const what = isBit ? 'one bit' : 'one byte'
	return { bytes, at: `${what} at ${at} of ${original.length}: ${was} became ${bytes[at]}` }
}
/** A digest in the trail is for the verification, no entry that a person reads. */
const shown = (view: unknown): string =>
	JSON.stringify(view, (key, value) => (key === 'hash' ? undefined : value)) ?? ''
const differing = (before: Look, now: Look): string[] =>
	Object.keys({ ...before.views, ...now.views }).filter(
		(view) => view !== 'audit.verify' && shown(before.views[view]) !== shown(now.views[view]),
	)
const fresh = (before: readonly string[], now: readonly string[]): string[] =>
	now.filter((text) => !before.includes(text))
const isRefused = (look: Look, view: string): boolean =>
	(look.views[view] as { refused?: string } | undefined)?.refused !== undefined
/** Words of an answer that goes on without something. */
const lacking = /damaged|cannot be read|left out/g
const saysLacking = (before: Look, now: Look, view: string): boolean =>
	(shown(now.views[view]).match(lacking) ?? []).length >
	(shown(before.views[view]).match(lacking) ?? []).length
/** Refused, or saying itself what it lacks, or not asked for because what leads to it was refused. */
function isSaid(before: Look, now: Look, changed: readonly string[]): boolean {
	// the page of the trail says beside it which rows it leaves out
	const isPageSaid = now.views['audit.page, left out'] !== undefined
	const said = changed.filter(
		(view) =>
			isRefused(now, view) ||
			saysLacking(before, now, view) ||
			(isPageSaid && view.startsWith('audit.page')),
	)
	const others = changed.filter((view) => !said.includes(view))
	return said.length > 0 && others.every((view) => now.views[view] === undefined)
}
interface Met {
	outcome: Outcome
	changed: string[]
	said: string[]
}
async function metBy(before: Look, now: Look): Promise<Met> {
	const changed = differing(before, now)
	const warnings = fresh(before.warnings, now.warnings)
	const problems = fresh(before.problems, now.problems)
	const all = { changed, said: [...warnings, ...problems] }
	if (now.opening !== undefined)
		return { outcome: 'said at opening', changed: [], said: [now.opening] }
	if (now.unlock !== undefined)
		return { outcome: 'said at unlock', changed: [], said: [now.unlock, ...warnings] }
	if (warnings.length > 0) return { ...all, outcome: 'said at unlock' }
	if (isSaid(before, now, changed)) return { ...all, outcome: 'said on reading' }
	if (problems.length > 0) return { ...all, outcome: 'said by verify only' }
	if (changed.length === 0) return { ...all, outcome: 'same' }
	const says = await backupSays(program, pc)
	if (says === undefined) return { ...all, outcome: 'silent' }
	return { changed, said: [says], outcome: 'said by backup only' }
}
put(original)
const whole = await lookAt(program, pc)
/** The row of this opening itself bears another digest each time. */
const lastRow = ((whole.views['audit.page'] as { seq: number }[])[0]?.seq ?? 1) - 1
put(original)
const before = await lookAt(program, pc, { lastRow })
for (let round = Number(from); round <= Number(to); round++) {
	const { bytes, at } = damaged(round)
	put(bytes)
	const now = await lookAt(program, pc, { lastRow })
	const damage: Damage = { round, at, ...(await metBy(before, now)), faults: now.faults }
	process.send?.(damage)
}
process.disconnect()
process.exit(0)
