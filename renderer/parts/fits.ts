/** Whether something fits what is typed. Pure. */
import { folded } from '../../shared/engine/plain/folded.ts'

/** Every word of the query stands in the name, whatever accents and capitals. */
export const fits = (name: string, query: string): boolean =>
	folded(query)
		.split(/\s+/)
		.every((word) => folded(name).includes(word))
