/** Trade terms in plain English: features, conditions, sides, actions, rules. */
export const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const
export const sideWords = { left: 'left', right: 'right', both: 'both sides', none: '' } as const
export const actionWords = { proceed: 'no referral recorded', letter: 'letter to the doctor', imaging: 'imaging before impact sport', 'same-day': 'medical review the same day', emergency: 'emergency care now' } as const
/** What screening asks for, as a player reads it after 'First:'. */
export const plainActionWords = { proceed: 'no doctor is needed now', letter: 'we write to your doctor', imaging: 'no running or jumping until a scan has been looked at', 'same-day': 'get medical help today', emergency: 'get emergency help now' } as const
export const defaultWarningSigns = ['pain that makes you limp', 'pain at rest or at night', 'swelling, a change of colour, or numbness', 'a blister or a break in the skin from a shoe or insert']
export const ankleLimits = { gastrocnemius: 'the long calf muscle', 'soleus-or-capsule': 'the deep calf or the joint itself', 'anterior-block': 'a pinch at the front of the ankle', none: '', unknown: '' } as const
export const strengthWords = { standard: 'a standard', guideline: 'a guideline', trial: 'trials', cohort: 'studies over time', 'cross-sectional': 'studies at one time', expert: 'expert agreement', practice: 'practice', clinic: 'set by the clinic' } as const
/** Features in words that a player may read; a feature not named here is written as the trade writes it. */
export const featureWords: Record<string, string> = {
	'wide-fitting': 'a wide fitting',
	'narrow-fitting': 'a narrow fitting',
	'deep-toe-box': 'depth over the toes',
	'soft-upper': 'a soft upper that gives',
	'smooth-forefoot-seams': 'no seams over the front of the foot',
	'firm-heel-counter': 'a firm cup around the heel',
	'soft-heel-counter': 'a soft cup around the heel',
	'low-heel-collar': 'a low collar behind the heel',
	'raised-heel': 'a heel higher than the front',
	'low-heel': 'a flat sole',
	'full-length-cushioning': 'soft padding along the whole sole',
	'wide-base': 'a wide, steady base',
	'stiff-forefoot': 'a front that bends little',
	'flexible-forefoot': 'a front that bends easily',
	'torsional-stiffness': 'a middle that does not twist',
	'removable-liner': 'a liner that comes out',
	'low-mass': 'a very light boot',
	'round-studs': 'round studs',
	'bladed-studs': 'bladed studs',
	'many-studs': 'many studs',
	'short-studs': 'short studs',
	'long-studs': 'long studs',
	'stud-clear-of-first-joint': 'no stud under the big-toe joint',
	'stud-clear-of-fifth-metatarsal': 'no stud under the outer edge of the forefoot',
	'low-rotational-grip': 'studs that let the foot turn',
	'deep-instep': 'depth over the instep',
	'high-heel-counter': 'a high cup around the heel',
	'padded-collar': 'a padded collar',
	'soft-ground-sole': 'a sole for soft ground',
	'firm-ground-sole': 'a sole for firm ground',
	'artificial-ground-sole': 'a sole for artificial ground',
	'turf-sole': 'a turf sole',
	'indoor-sole': 'an indoor sole',
}
/** How a condition stands, as a player reads it. */
export const statusWords = { current: 'now', recovering: 'getting better', past: 'in the past' } as const
/** Rules whose own name is short trade language. */
export const ruleWords: Record<string, string> = {
	'first-ray': 'First metatarsal held low',
	'first-mtp': 'Big-toe joint',
	fpi: 'Foot posture index',
	'fpi-6': 'Foot posture index',
	ottawa: 'Ottawa rules for ankle and foot',
	wells: 'Wells rule for a clot in the leg',
	acl: 'ACL injury in the past',
	'first-joint': 'Big-toe joint',
	'third-generation': 'Artificial turf (3G)',
	'sand-dressed': 'Sand-dressed turf',
	artificial: 'Artificial ground',
	hall: 'Sports hall',
	road: 'Road and gym',
	'turf-toe': 'Turf toe',
	'between-sizes': 'Between two sizes',
	'skin-at-risk': 'Skin at risk',
	sensation: 'Feet at risk',
	'inner-tendon': 'Tendon at the inner ankle',
	'outer-tendon': 'Tendon at the outer ankle',
	junior: 'Growing player',
	'speed-position': 'Running position',
	achilles: 'Achilles rupture',
	syndesmosis: 'High ankle sprain',
	lisfranc: 'Midfoot joints',
	tumour: 'Bone pain or lump',
	neurological: 'Nerves',
	vascular: 'Blood supply',
	inflammatory: 'Inflammatory joints',
	lowEnergy: 'Low energy availability',
	boneStress: 'Bone stress',
}
/** The rooms of the protocol, as the settings head them. */
export const roomNames: Record<string, string> = {
	player: 'Player',
	sizing: 'Sizing',
	ankle: 'Ankle',
	posture: 'Posture',
	growth: 'Growth',
	screening: 'Screening',
	footwear: 'Footwear',
	loading: 'Load',
	insert: 'Insert',
	season: 'Season',
	squad: 'Squad day',
	conditions: 'Conditions: usual ages',
}
