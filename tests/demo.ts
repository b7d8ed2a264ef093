/** The invented scenario of assets/demo, read as the program reads it. */
import { readFileSync } from 'node:fs'
import { clinicSchema } from '../shared/engine/report/clinic.ts'
import { parseVisit } from '../shared/engine/visit/parse.ts'
import type { Visit } from '../shared/engine/visit/visit.ts'

export const json = (name: string) =>
	JSON.parse(readFileSync(new URL(`../assets/demo/${name}`, import.meta.url), 'utf8'))
export const clinic = clinicSchema.parse(json('clinic.json'))
/** The day on which the demo stands as in its files. */
export const demoDay: string = json('demo.json').toldOn
/** @throws Error with the problems, so that a test on a bad visit fails loudly */
export function read(input: unknown): Visit {
	const parsed = parseVisit(input)
	if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
	return parsed.value
}
