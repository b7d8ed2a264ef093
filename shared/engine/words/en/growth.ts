/** What the growth room says. */
export const growthSentences = {}
/** Names of its numbers that are no measure of the visit. */
export const growthReadings = {}
