/** What the posture room says. */
export const postureSentences = {}
/** Names of its numbers that are no measure of the visit. */
export const postureReadings = {}
