/** The files a command is given, each read by its format. */

import { readFileSync } from 'node:fs'
import type { z } from 'zod'
import { parseJson, RepeatedKey } from '../../shared/engine/plain/json.ts'
import {
	openProtocol,
	type ProtocolFile,
	protocolSchema,
	shippedProtocol,
} from '../../shared/engine/protocol/protocol.ts'
import { type Clinic, clinicSchema } from '../../shared/engine/report/clinic.ts'
import { parseVisit } from '../../shared/engine/visit/parse.ts'
import { problemLine, problemsOf } from '../../shared/engine/visit/problems.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { fullName } from '../../shared/engine/words/names.ts'
import { FileRefused, readPlainFile } from '../store/plain-file.ts'
import { BadInput } from './args.ts'

/** What is read of one file at most, in bytes: far above the largest protocol. */
const mostBytes = 64 * 1024 * 1024
const isStandardInput = (name: string): boolean => name === '-'

function whyUnread(error: unknown): string {
	if (!(error instanceof FileRefused)) return (error as NodeJS.ErrnoException).code ?? 'undefined'
	return error.why === 'absent' ? 'no such file' : error.message
}
function readText(name: string): string {
	try {
		return isStandardInput(name)
			? readFileSync(0, 'utf8')
			: readPlainFile(name, mostBytes).toString('utf8')
	} catch (error) {
		throw new BadInput([
			`${name}: cannot be read (${whyUnread(error)}), given ${name}, allowed: a JSON file, or ` +
				'- for standard input',
		])
	}
}
/** JSON from a file, or standard input for '-'. @throws BadInput where it cannot be read */
export function readJson(name: string): unknown {
	const text = readText(name)
	try {
		return parseJson(text.replace(/^\uFEFF/, ''))
	} catch (error) {
		if (error instanceof RepeatedKey) throw new BadInput([problemLine(error)])
		const why =
			error instanceof Error ? error.message.replace(/\s+/g, ' ').slice(0, 120) : 'not JSON'
		const given = isStandardInput(name) ? 'standard input' : name
		throw new BadInput([`(file): not JSON (${why}), given ${given}, allowed: one JSON object`])
	}
}
/** A file of a format whose schema alone decides. @throws BadInput with a line for each problem */
export function readAs<T>(schema: z.ZodType<T>, name: string): T {
	const json = readJson(name)
	const parsed = schema.safeParse(json)
	if (!parsed.success) throw new BadInput(problemsOf(parsed.error, json).map(problemLine))
	return parsed.data
}
export function readVisit(name: string): Visit {
	const parsed = parseVisit(readJson(name))
	if (!parsed.ok) throw new BadInput(parsed.problems.map(problemLine))
	return parsed.value
}
export function readProtocol(name: string | undefined): ProtocolFile {
	if (name === undefined) return shippedProtocol
	const file = readAs(protocolSchema, name)
	try {
		openProtocol(file)
	} catch (error) {
		throw new BadInput([error instanceof Error ? error.message : 'protocol: not understood'])
	}
	return file
}
export const readClinic = (name: string | undefined): Clinic | undefined =>
	name === undefined ? undefined : readAs(clinicSchema, name)
/** The earlier visits, of the same player only. */
export function readEarlier(names: string[] | undefined, visit: Visit): Visit[] {
	return (names ?? []).map((name) => {
		const earlier = readVisit(name)
		if (
			earlier.player.birthDate !== visit.player.birthDate ||
			earlier.player.familyName !== visit.player.familyName
		)
			throw new BadInput([
				`player: another player, given ${fullName(earlier.player)} ` +
					`(${earlier.player.birthDate}) in ${name}, allowed: earlier visits of ` +
					fullName(visit.player),
			])
		return earlier
	})
}
