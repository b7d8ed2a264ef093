/** What is nobody's business but the player's and the clinician's. */
export const privateTopics = [
	'pregnancy',
	'periods',
	'medication',
	'weight',
	'safeguarding',
] as const
export type PrivateTopic = (typeof privateTopics)[number]
