import { assess } from '../../shared/assess.ts'
import { readArgs, readEarlier, readProtocol, readVisit, say } from './io.ts'

/** Prints the Assessment of a visit as JSON. */
export async function assessCommand(args: string[]): Promise<void> {
	const { place, option } = readArgs(args, { protocol: { type: 'string' }, earlier: { type: 'string', multiple: true } }, ['VISIT.json'])
	const visit = readVisit(place[0]!)
	const protocol = readProtocol(option.protocol as string | undefined)
	say(`${JSON.stringify(assess(visit, readEarlier(option.earlier as string[] | undefined, visit), protocol), null, '\t')}\n`)
}
