/** Things of one kind by their id: the newest version of each, and the record that holds it. */
export class Newest<Value> {
	readonly #things = new Map<string, { value: Value; recordId: string }>()
	get(id: string): Value | undefined {
		return this.#things.get(id)?.value
	}
	/** The record the next version follows; undefined where there is none yet. */
	recordOf(id: string): string | undefined {
		return this.#things.get(id)?.recordId
	}
	/** In the order in which the first version of each was read. */
	all(): Value[] {
		return [...this.#things.values()].map((thing) => thing.value)
	}
	take(id: string, value: Value, recordId: string): void {
		this.#things.set(id, { value, recordId })
	}
	clear(): void {
		this.#things.clear()
	}
}
