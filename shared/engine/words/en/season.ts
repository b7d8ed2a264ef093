/** What the season room says. */
export const seasonSentences = {}
/** Names of its numbers that are no measure of the visit. */
export const seasonReadings = {}
