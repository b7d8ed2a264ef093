/** What is said of changes to a boot and of lacing. */
export const workSentences = {}
/** Names of its numbers that are no measure of the visit. */
export const workReadings = {}
