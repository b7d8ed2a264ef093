/** What the sizing room says. */
export const sizingSentences = {}
/** Names of its numbers that are no measure of the visit. */
export const sizingReadings = {}
