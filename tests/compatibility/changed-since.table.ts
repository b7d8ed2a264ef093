/**
 * What later versions show otherwise on purpose, each with its reason. Nothing that was recorded may
 * stand here: words and what is worked out anew only.
 */
interface IntendedChange {
	/** versions that wrote the fixture */
	of: readonly string[]
	/** the opening or homecoming it is about; absent: each */
	opening?: string
	/** the answer and the path in it */
	where: RegExp
	because: string
}
export const changedSince: readonly IntendedChange[] = [
	{ of: ['0.1.0'], opening: 'return.lwpack', where: /^preview \/ counts \/ (before|after)$/, because: 'this version begins its own work in records of 0.1.0 with one record, which tells by whose key it signs' },
	{ of: ['0.1.0'], opening: 'return.lwpack', where: /^preview \/ notices$/, because: 'what 0.1.0 wrote away bears no signature, and the preview says so' },
	{ of: ['0.1.0'], opening: 'the pack', where: /^(people\.list \/ people \/ \d+ \/ hasPin|session\.people \/ people)$/, because: 'packs of 0.1.0 carried PINs; none is taken from a pack any more' },
	{ of: ['0.1.0', '0.2.0'], where: /^outbox\.recipients .* \/ recipients \/ \d+ \/ consents \/ \d+$/, because: 'the answer about a consent names its purpose beside the sentence, which stands unchanged in it' },
	{ of: ['0.1.0', '0.2.0', '0.3.0'], where: /^season\.open .* \/ planned \/ basisChanged$/, because: 'a plan of an open draft rests on its warning signs, outcomes and answers too: one made before them is made anew before chart and calendar go out' },
	{ of: ['0.1.0', '0.2.0', '0.3.0', '0.4.0', '0.5.0'], where: /^(consents\.check .* \/ because|outbox\.recipients .* \/ consents \/ \d+( \/ says)?|outbox\.look .* \/ (consents|missing) \/ \d+)$/, because: 'the days in the answer about a consent stand in words' },
	{ of: ['before 0.1.0', '0.1.0', '0.2.0', '0.3.0', '0.4.0', '0.5.0'], where: /^session\.people \/ people$/, because: 'whoever has no PIN takes over by passphrase, and is listed too' },
	{ of: ['before 0.1.0', '0.1.0', '0.2.0', '0.3.0', '0.4.0', '0.5.0'], where: /^breaches\.list \/ breaches \/ \d+ \/ access$/, because: 'who read a document is told once a person, with all that was done' },
]
