/**
 * What is a test under load, once for every room and screen: paths of the visit without their side.
 * Looking, taking a size and moving the foot off the ground are none. Of the questions those that ask
 * for a hop.
 */
export const loadTests: readonly string[] = [
	'ankles.lungeCm',
	'ankles.lungeDeg',
	// felt at the end of the lunge
	'ankles.endFeel',
	'posture.jackTestDeg',
	'posture.heelRises',
	'screening.boneStress.hopPain',
	'screening.syndesmosis.cannotHop',
]
