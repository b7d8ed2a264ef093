/** What is remembered of the shelf. */
import { parseShelf, type Shelf } from '../../../shared/engine/visit/shelf.ts'
import type { Remembered } from '../records/remember.ts'

export class ShelfMemory {
	/** what can be bought locally; undefined until a shelf is saved */
	shelf: Shelf | undefined
	/** the record that holds it; what is saved next follows it */
	recordId: string | undefined

	take({ id, value }: Remembered, warn: (says: string) => void): void {
		const read = parseShelf(value)
		if (read.ok) this.shelf = read.value
		else
			warn(
				'The newest shelf cannot be read. The one before it is shown, if there is one: open ' +
					'Shelf and save it again.',
			)
		this.recordId = id
	}
	clear(): void {
		this.shelf = undefined
		this.recordId = undefined
	}
}
