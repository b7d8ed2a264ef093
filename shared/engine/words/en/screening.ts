/** What the screening room says. */
export const screeningSentences = {}
/** Names of its numbers that are no measure of the visit. */
export const screeningReadings = {}
