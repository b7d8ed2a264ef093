/** What is said of a pair that the player owns. */
export const pairsSentences = {}
/** Names of its numbers that are no measure of the visit. */
export const pairsReadings = {}
