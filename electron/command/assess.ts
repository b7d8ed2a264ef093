import { assess } from '../../shared/engine/assess.ts'
import { need } from '../../shared/engine/plain/need.ts'
import { problemLine } from '../../shared/engine/visit/problems.ts'
import { parseShelf, type Shelf } from '../../shared/engine/visit/shelf.ts'
import { BadInput, readArgs, say } from './args.ts'
import { readEarlier, readJson, readProtocol, readVisit } from './files.ts'

function readShelf(name: string | undefined): Shelf | undefined {
	if (name === undefined) return undefined
	const parsed = parseShelf(readJson(name))
	if (!parsed.ok) throw new BadInput(parsed.problems.map(problemLine))
	return parsed.value
}

/** Prints the Assessment of a visit as JSON. */
export async function assessCommand(args: string[]): Promise<void> {
	const { place, option } = readArgs(
		args,
		{
			shelf: { type: 'string' },
			protocol: { type: 'string' },
			earlier: { type: 'string', multiple: true },
		},
		['VISIT.json'],
	)
	const visit = readVisit(need(place[0], 'VISIT.json'))
	const protocol = readProtocol(option.protocol)
	const earlier = readEarlier(option.earlier, visit)
	const assessment = assess(visit, earlier, protocol, readShelf(option.shelf))
	say(`${JSON.stringify(assessment, null, '\t')}\n`)
}
