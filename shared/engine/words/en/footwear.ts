/** What the footwear room says. */
export const footwearSentences = {}
/** Names of its numbers that are no measure of the visit. */
export const footwearReadings = {}
