/** What is said of a model of the shelf. */
export const matchSentences = {}
/** Names of its numbers that are no measure of the visit. */
export const matchReadings = {}
