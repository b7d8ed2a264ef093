import { z } from 'zod'
import { need } from '../../shared/engine/plain/need.ts'
import { protocolSchema } from '../../shared/engine/protocol/protocol.ts'
import { clinicSchema } from '../../shared/engine/report/clinic.ts'
import { planSchema } from '../../shared/engine/season/plan-file.ts'
import { shelfSchema } from '../../shared/engine/visit/shelf.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { BadInput, readArgs, say } from './args.ts'

const schemas: Record<string, z.ZodType> = {
	visit: visitSchema,
	clinic: clinicSchema,
	protocol: protocolSchema,
	shelf: shelfSchema,
	plan: planSchema,
}

/** Prints the JSON Schema of a file format. */
export async function schemaCommand(args: string[]): Promise<void> {
	const { place } = readArgs(args, {}, ['NAME'])
	const name = need(place[0], 'NAME')
	const schema = Object.hasOwn(schemas, name) ? schemas[name] : undefined
	if (!schema)
		throw new BadInput([
			`NAME: no such schema, given "${name}", allowed: ${Object.keys(schemas).join(', ')}`,
		])
	const printed = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' })
	say(`${JSON.stringify(printed, null, '\t')}\n`)
}
