import { assess } from '../../shared/engine/assess.ts'
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
	const visit = readVisit(place[0]!)
	const protocol = readProtocol(option.protocol as string | undefined)
	const earlier = readEarlier(option.earlier as string[] | undefined, visit)
	say(
		`${JSON.stringify(assess(visit, earlier, protocol, readShelf(option.shelf as string | undefined)), null, '\t')}\n`,
	)
}
