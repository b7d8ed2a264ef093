/**
 * A value that the lines before make certain, in a way that the types cannot show.
 * @param what the value in words, for the error
 * @throws Error naming it where it is missing after all: a fault of the program, never of the input
 */
export function need<Value>(value: Value | null | undefined, what: string): Value {
	if (value === undefined || value === null) throw new Error(`${what} is missing`)
	return value
}
