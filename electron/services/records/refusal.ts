/** A refusal in words for the person; anything else thrown is a fault of ours. */
export class Refusal extends Error {
	/** the entries it is about, each with its path and what is wrong with it */
	readonly problems: { path: string; message: string }[] | undefined
	constructor(message: string, problems?: { path: string; message: string }[]) {
		super(message)
		this.problems = problems
	}
}
