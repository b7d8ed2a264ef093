/** What the insert room says. */
export const insertSentences = {}
/** Names of its numbers that are no measure of the visit. */
export const insertReadings = {}
