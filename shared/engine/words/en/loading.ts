/** What the loading room says. */
export const loadingSentences = {}
/** Names of its numbers that are no measure of the visit. */
export const loadingReadings = {}
