import { writeFileSync } from 'node:fs'
import { assess } from '../../shared/assess.ts'
import type { Clinic } from '../../shared/clinic.ts'
import { noDecisions } from '../../shared/decisions.ts'
import { playerReport } from '../../shared/report/player.ts'
import { renderPdf } from '../pdf/render.ts'
import { BadInput, readArgs, readClinic, readEarlier, readProtocol, readVisit } from './io.ts'

/** Kinds this version can compose. */
const kinds = { player: playerReport }
const unnamed: Clinic = { format: 'lastwright-clinic', version: 1, name: 'Footwear assessment', address: [], colour: '#1f5f5b', clinician: { name: 'the assessing clinician', registration: 'not stated' } }

/** Writes a PDF of a visit. Nothing is signed on the command line: the page says so. */
export async function reportCommand(args: string[]): Promise<void> {
	const text = { type: 'string' } as const
	const { place, option } = readArgs(args, { kind: text, out: text, clinic: text, protocol: text, earlier: { type: 'string', multiple: true } }, ['VISIT.json'])
	const problems: string[] = []
	const kind = option.kind
	if (typeof kind !== 'string' || !Object.hasOwn(kinds, kind)) problems.push(`--kind: ${kind === undefined ? 'missing, given nothing' : `not a kind this version can write, given "${kind}"`}, allowed: ${Object.keys(kinds).join(', ')}`)
	const out = option.out
	if (typeof out !== 'string' || out === '') problems.push('--out: missing, given nothing, allowed: the name of the PDF file to write')
	if (problems.length > 0) throw new BadInput(problems)
	const visit = readVisit(place[0]!)
	const protocol = readProtocol(option.protocol as string | undefined)
	const clinic = readClinic(option.clinic as string | undefined) ?? unnamed
	const assessment = assess(visit, readEarlier(option.earlier as string[] | undefined, visit), protocol)
	let bytes: Uint8Array
	try {
		bytes = await renderPdf(kinds[kind as keyof typeof kinds]({ visit, assessment, decisions: noDecisions, clinic, signedAt: undefined, draft: true }))
	} catch (error) {
		if (error instanceof Error && error.name === 'UnprintableText') throw new BadInput([error.message])
		throw error
	}
	try {
		writeFileSync(out as string, bytes)
	} catch (error) {
		throw new BadInput([`--out: cannot be written (${(error as NodeJS.ErrnoException).code}), given "${out}", allowed: a file in a folder that exists`])
	}
}
